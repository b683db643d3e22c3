"""Disks and buses that fail while the machine starts (injected by the block layer and the machine monitor)."""
from bench import LAB, LOGIN, MIB, NAMES, ROOT, TTY, scene, sh_text

SHELL = [r'\(initramfs\) ']
DISK = ['disk-reports-errors']


def dv(name, label, general=DISK, also=(), end=SHELL, stage='root', limit=150, **more):
    return scene(name, label, stage, general=general, also=also, end=end, limit=limit, **{'quiet': 45, **more})


def bad_sector(b, image, sector):
    c = b.dir / 'blkdebug.conf'
    c.write_text(f'[inject-error]\nevent = "none"\niotype = "read"\nerrno = "5"\nsector = "{sector}"\nonce = "off"\n')
    return f'driver=blkdebug,config={c},image.driver=raw,image.file.driver=file,image.file.filename={b.copy(image)}'


@dv('nvme-superblock-unreadable', 'nvme-media-error', general=DISK + ['root-device-never-appears'], also=['disk-unreadable-sectors'])
def _(b):
    """NVMe, reads of the sector with the root file system's superblock end with a media error"""
    b.disk(bus='nvme', file=bad_sector(b, 'base12.img', 66 * 2048 + 2), extra='')
    b.direct(f'root=/dev/nvme0n1p3 rootfstype=ext4 ro rootdelay=5 {TTY}')


@dv('ahci-superblock-unreadable', 'disk-unreadable-sectors', general=DISK + ['root-device-never-appears'], also=['disk-dying'])
def _(b):
    """AHCI, reads of the sector with the root file system's superblock fail"""
    b.disk(bus='ahci', file=bad_sector(b, 'base12.img', 66 * 2048 + 2))
    b.direct(f'root=/dev/sda3 rootfstype=ext4 ro rootdelay=5 {TTY}')


@dv('usb-stick-bad-medium', 'stick-capacity-or-media-fault', general=DISK + ['root-device-never-appears'], also=['disk-unreadable-sectors'])
def _(b):
    """USB stick, reads of the sector with the root file system's superblock fail"""
    b.disk(bus='usb', file=bad_sector(b, 'base12.img', 66 * 2048 + 2))
    b.direct(f'root=/dev/sda3 rootfstype=ext4 ro rootdelay=5 {TTY}')


@dv('ahci-disk-stops', 'disk-dying', end=['EH complete(.|\n)*EH complete', 'hard resetting link(.|\n)*hard resetting link'], limit=150, quiet=75, general=DISK, also=['sata-link-slow-unstable'], linger=4, stage='userland')
def _(b):
    """AHCI, the disk stops answering (throttled to nothing) when the installed system starts"""
    b.tell('Welcome to .*Debian', 'block_set_io_throttle d0 20 0 0 0 0 0', 2)
    b.disk(bus='ahci')
    b.direct(f'{ROOT} ro {TTY}')


@dv('nvme-stops-answering', 'nvme-times-out', end=['timeout, aborting(.|\n)*timeout(.|\n)*timeout', 'timeout, reset'], limit=150, quiet=75, general=DISK, linger=5, stage='userland')
def _(b):
    """NVMe, the disk stops answering when the installed system starts; nvme_core.io_timeout=8"""
    b.tell('Welcome to .*Debian', 'block_set_io_throttle d0 20 0 0 0 0 0', 2)
    b.disk(bus='nvme')
    b.direct(f'{ROOT} ro nvme_core.io_timeout=8 {TTY}')


@dv('usb-stick-pulled', 'boot-stick-falls-off', end=['I/O error(.|\n)*EXT4-fs', 'Buffer I/O'], general=DISK + ['usb-device-fails'], linger=10, quiet=40, stage='userland')
def _(b):
    """the USB stick with the root file system is unplugged while services start"""
    b.tell('Welcome to .*Debian', 'device_del dev-d0', 5)
    b.disk(bus='usb')
    b.direct(f'{ROOT} ro {TTY}')


@dv('partition-tables-damaged', 'disk-gpt-damaged', general=['root-device-never-appears', 'initramfs-ends-in-shell'], also=['root-id-on-no-disk'])
def _(b):
    """both GPT headers were overwritten, the protective MBR is left"""
    d = b.copy('base12.img')
    sh_text(f'dd if=/dev/zero of={d} bs=512 seek=1 count=33 conv=notrunc status=none; s=$(stat -c %s {d}); dd if=/dev/zero of={d} bs=512 seek=$((s/512-33)) count=33 conv=notrunc status=none')
    b.disk(d, bus='ahci')
    b.direct(f'{ROOT} ro rootdelay=5 {TTY}')


@dv('image-on-smaller-disk', 'disk-smaller-than-partition', general=['root-mount-fails', 'root-device-never-appears', 'initramfs-ends-in-shell'], also=['disk-gpt-damaged'])
def _(b):
    """the image of a 2 GB disk was written to a disk of 1.2 GB"""
    d = b.copy('base12.img')
    sh_text(f'truncate -s 1200M {d}')
    b.disk(d, bus='nvme')
    b.direct(f'{ROOT} ro rootdelay=5 {TTY}')


@dv('watchdog-bites', 'watchdog-resets-machine', general=['firmware-restarts-over-and-over'], end=['Linux version(.|\n)*Run /init(.|\n)*Linux version(.|\n)*Run /init'], stage='devices', limit=140, quiet=60)
def _(b):
    """a hook of the initramfs starts the hardware watchdog and the rest of the boot takes longer than its time"""
    def edit(t):
        from scenes.odd import hook
        hook(t, 'init-premount', 'dog', 'modprobe i6300esb heartbeat=6\nsleep 1\nexec 9>/dev/watchdog\necho >&9\nsleep 60\n')
        import shutil
        v = (LAB / 'kver12').read_text().strip()
        d = t / f'usr/lib/modules/{v}/kernel/drivers/watchdog'
        d.mkdir(parents=True, exist_ok=True)
        shutil.copy(LAB / f'root12/usr/lib/modules/{v}/kernel/drivers/watchdog/i6300esb.ko', d)
        sh_text(f'depmod -b {t} {v}')
    b.args += ['-device', 'i6300esb', '-action', 'watchdog=reset']
    b.disk()
    b.direct(f'{ROOT} ro {TTY}', initrd=b.initrd(edit))


@dv('root-turns-read-only', 'root-turned-read-only', general=DISK, end=['Remounting filesystem read-only', 'previous I/O error to superblock'], linger=15, stage='userland', limit=120)
def _(b):
    """writes to the journal of the root file system fail after it was mounted (virtio disk unplugged from its data)"""
    c = b.dir / 'blkdebug.conf'
    c.write_text('[set-state]\nevent = "write_aio"\nstate = "1"\nnew_state = "2"\n[inject-error]\nevent = "write_aio"\nerrno = "5"\nonce = "off"\nstate = "2"\n')
    d = b.copy('base12.img')
    b.disk(bus='ahci', file=f'driver=blkdebug,config={c},image.driver=raw,image.file.driver=file,image.file.filename={d}')
    b.direct(f'{ROOT} ro {TTY}')
