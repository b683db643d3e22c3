"""Sticks, sectors and checked images that fail while the machine starts."""
from bench import LAB, MIB, ROOT, TTY, sh_text
from scenes.devices import DISK, bad_sector, dv
from scenes.root import SHELL, rt, without
from scenes.shapes import live_stick
from scenes.userland import boot, fstab, us


def sector_of(path, image='base12.img'):
    """Sector of the first block of a file on the disk, found with debugfs."""
    import subprocess
    out = subprocess.run(['debugfs', '-R', f'blocks {path}', f"{LAB / image}?offset={66 * MIB}"], capture_output=True, text=True).stdout.split()
    return 66 * 2048 + int(out[0]) * 8


@dv('ahci-init-unreadable', 'disk-unreadable-sectors', general=DISK + ['kernel-panics', 'init-exits'], also=['disk-dying'], end=['end Kernel panic'], stage='root', limit=200)
def _(b):
    """AHCI, reads of the first sector of the init program fail"""
    b.disk(bus='ahci', file=bad_sector(b, 'base12.img', sector_of('/usr/lib/systemd/systemd')))
    b.direct(f'{ROOT} ro {TTY}')


@dv('virtio-init-library-unreadable', 'disk-unreadable-sectors', general=DISK + ['kernel-panics', 'init-exits'], also=['disk-dying'], end=['end Kernel panic'], stage='userland', limit=200)
def _(b):
    """virtio disk, reads of the first sector of systemd's own library fail"""
    n = next((LAB / 'root12/usr/lib/x86_64-linux-gnu/systemd').glob('libsystemd-shared-*.so')).name
    b.disk(file=bad_sector(b, 'base12.img', sector_of(f'/usr/lib/x86_64-linux-gnu/systemd/{n}')))
    b.direct(f'{ROOT} ro {TTY}')


@dv('live-stick-pulled', 'boot-stick-falls-off', general=DISK + ['usb-device-fails'], end=['SQUASHFS error(.|\n)*SQUASHFS error', 'I/O error(.|\n)*I/O error'], linger=12, quiet=60, stage='userland', limit=220)
def _(b):
    """a live system, its USB stick is pulled while services start"""
    b.memory = 768
    b.tell('Welcome to .*Debian', 'device_del dev-d0', 6)
    b.disk(live_stick(b), bus='usb')
    b.direct(f'boot=live components {TTY}', initrd='initrd12.live')


@dv('stick-pulled-before-root', 'boot-stick-falls-off', general=DISK + ['usb-device-fails', 'root-device-never-appears', 'initramfs-ends-in-shell'], stage='root', limit=200, quiet=110)
def _(b):
    """the USB stick with the root file system is pulled when the initramfs has just found it"""
    b.tell(r'sd \d:0:0:0: \[sda\] \d+ 512-byte', 'device_del dev-d0', 0)
    b.disk(bus='usb')
    b.direct(f'{ROOT} ro rootdelay=5 {TTY}')


@rt('live-overlay-missing', 'overlay-mount-fails', general=['initramfs-ends-in-shell', 'kernel-panics'], end=SHELL + ['end Kernel panic'], limit=240, quiet=110)
def _(b):
    """a live system on a USB stick, the module overlay is missing in the initramfs"""
    b.memory = 768
    b.disk(live_stick(b), bus='usb')
    b.direct(f'boot=live components {TTY}', initrd=b.initrd(without('overlay'), 'initrd12.live'))


@us('verity-block-corrupted', 'verity-or-image-check-fails', general=['emergency-mode-entered', 'unit-fails'], also=['mount-unit-fails'])
def _(b):
    """a data image that is checked by dm-verity (veritytab); its superblock was changed after the hashes were made"""
    import subprocess
    data, tree = b.small_root(), b.dir / 'hash.img'
    out = subprocess.run(['veritysetup', 'format', str(data), str(tree)], capture_output=True, text=True, check=True).stdout
    digest = out.split('Root hash:')[1].split()[0]
    sh_text(f'printf lantern | dd of={data} bs=1 seek=1400 conv=notrunc status=none')

    def edit(r):
        (r / 'etc/veritytab').write_text(f'shelf /dev/vdb /dev/vdc {digest}\n')
        fstab('/dev/mapper/shelf /srv/parts ext4 ro,x-systemd.device-timeout=30 0 0')(r)
    boot(b, edit)
    b.disk(data)
    b.disk(tree)
