"""Faults on the way to the root file system: initramfs-tools (12) and dracut (13)."""
import re
import shutil
from bench import LAB, LOGIN, MIB, NAMES, ROOT, TTY, scene, sh, sh_text

SHELL = [r'\(initramfs\) ']
GONE = ['root-device-never-appears', 'initramfs-ends-in-shell']
MOUNT = ['root-mount-fails', 'initramfs-ends-in-shell']
VOLUME = ['root-volume-not-set-up', 'root-device-never-appears', 'initramfs-ends-in-shell']
DRACUT = [r'or press Control-D to continue\)', r'Press Enter (for (emergency shell|maintenance)|to continue)', r'dracut:/#', r'sh-5\.\d#']
OTHER = '77777777-aaaa-4aaa-8aaa-242424242424'
SHORT = 'rd.timeout=60 rd.retry=40'


def rt(name, label, general=GONE, also=(), end=SHELL, stage='root', limit=150, **more):
    if end[:len(DRACUT)] == DRACUT:  # dracut is silent while it waits
        more.setdefault('quiet', 110)
        limit = 240
    return scene(name, label, stage, general=general, also=also, end=end, limit=limit, linger=2, **more)


@rt('initramfs-wrong-uuid', 'root-id-on-no-disk')
def _(b):
    """initramfs-tools, root=UUID= names an identifier that no disk has"""
    b.disk()
    b.direct(f'root=UUID={OTHER} ro {TTY}')


@rt('initramfs-wrong-label-quiet', 'root-id-on-no-disk')
def _(b):
    """initramfs-tools with quiet, root=LABEL= with a label that no disk has, AHCI disk"""
    b.disk(bus='ahci')
    b.direct(f'root=LABEL=workshop-root ro quiet rootdelay=5 {TTY}')


@rt('dracut-wrong-uuid', 'root-id-on-no-disk', end=DRACUT)
def _(b):
    """dracut with systemd, root=UUID= names an identifier that no disk has"""
    b.disk('base13.img')
    b.direct(f'root=UUID={OTHER} ro {SHORT} {TTY}', 'kernel13', 'initrd13')


@rt('dracut-without-systemd-wrong-partuuid', 'root-id-on-no-disk', end=DRACUT)
def _(b):
    """dracut without systemd, root=PARTUUID= names a partition that no disk has"""
    b.disk('base13.img', bus='scsi')
    b.direct(f'root=PARTUUID={OTHER} ro {SHORT} {TTY}', 'kernel13', 'initrd13.nosystemd')


@rt('initramfs-disk-renamed', 'root-device-name-changed')
def _(b):
    """initramfs-tools, root=/dev/sda3 while the disk is an NVMe disk now"""
    b.disk(bus='nvme')
    b.direct(f'root=/dev/sda3 ro rootdelay=5 {TTY}')


@rt('initramfs-no-root-argument', 'root-argument-missing')
def _(b):
    """initramfs-tools, no root= on the command line"""
    b.disk()
    b.direct(f'ro rootdelay=5 {TTY}')


@rt('dracut-no-root-argument', 'root-argument-missing', end=DRACUT + [r'Kernel panic', 'System halted'], also=[])
def _(b):
    """dracut without systemd, no root= on the command line"""
    b.disk('base13.img')
    b.direct(f'ro {SHORT} {TTY}', 'kernel13', 'initrd13.nosystemd')


def without(*modules):
    def edit(t):
        for m in modules:
            for f in list((t / 'usr/lib/modules').rglob(f'{m}.ko*')):
                f.unlink()
    return edit


def missing(name, label, bus, modules, append='rootdelay=5', also=('root-id-on-no-disk',)):
    def make(b):
        b.disk(bus=bus)
        b.direct(f'{ROOT} ro {append} {TTY}', initrd=b.initrd(without(*modules)))
    make.__doc__ = f'initramfs-tools, the modules {", ".join(modules)} are missing in the initramfs, root disk is on {bus}'
    rt(name, label, also=also)(make)


missing('initramfs-without-ahci', 'ahci-driver-not-in-initramfs', 'ahci', ['ahci', 'libahci'])
missing('initramfs-without-nvme', 'nvme-driver-not-in-initramfs', 'nvme', ['nvme', 'nvme-core'])
missing('initramfs-without-usb-storage', 'usb-storage-not-in-initramfs', 'usb', ['usb-storage', 'uas'])
missing('initramfs-without-virtio', 'virtio-driver-not-in-initramfs', 'virtio', ['virtio_blk', 'virtio_pci'])
missing('initramfs-without-sdhci', 'sd-card-driver-not-in-initramfs', 'sd', ['sdhci-pci', 'sdhci', 'mmc_block'])


@rt('initramfs-module-of-other-kernel', 'module-version-mismatch', also=['virtio-driver-not-in-initramfs'])
def _(b):
    """initramfs-tools, virtio modules in the initramfs were built for another kernel version"""
    def edit(t):
        v = (LAB / 'kver12').read_text().strip()
        for m in ('virtio_blk', 'virtio_pci'):
            new = next((LAB / 'root13/usr/lib/modules').rglob(f'{m}.ko*'))
            old = next((t / 'usr/lib/modules').rglob(f'{m}.ko'))
            if new.suffix == '.xz':
                sh_text(f'xz -dc {new} > {old}')
            else:
                shutil.copy(new, old)
    b.disk()
    b.direct(f'{ROOT} ro rootdelay=5 {TTY}', initrd=b.initrd(edit))


@rt('initramfs-unsigned-module-refused', 'unsigned-module-refused')
def _(b):
    """initramfs-tools, signatures enforced (module.sig_enforce=1) and virtio_blk without its signature"""
    def edit(t):
        f = next((t / 'usr/lib/modules').rglob('virtio_blk.ko'))
        sh('strip', '--strip-debug', f)
    b.disk()
    b.direct(f'{ROOT} ro rootdelay=5 module.sig_enforce=1 {TTY}', initrd=b.initrd(edit))


@rt('initramfs-disk-comes-late', 'root-disk-appears-too-late', end=[r'sd[a-z]: sd[a-z]1.*\n'], also=['root-id-on-no-disk'])
def _(b):
    """initramfs-tools, the USB disk answers only after the wait for the root device was over"""
    b.xhci()
    b.args += ['-drive', f"if=none,id=late,file={LAB / 'base12.img'},format=raw,snapshot=on"]
    b.tell(r'\(initramfs\) ', 'device_add usb-storage,drive=late,bus=xhci.0,id=latestick', 4)
    b.direct(f'{ROOT} ro rootdelay=4 {TTY}')


@rt('initramfs-resume-device-gone', 'resume-device-gone', stage='done', end=[LOGIN], general=[], limit=200)
def _(b):
    """initramfs-tools, resume=UUID= names swap space that is gone; the boot waits and goes on"""
    b.disk()
    b.direct(f'{ROOT} ro resume=UUID={OTHER} {TTY}', initrd=b.initrd(lambda t: [f.write_text(f'RESUME=UUID={OTHER}\n') for f in [t / 'conf/conf.d/resume'] if f.parent.mkdir(exist_ok=True) is None]))


# --- file systems -----------------------------------------------------------------------------------------------


@rt('ext4-superblock-overwritten', 'ext4-superblock-damaged', general=MOUNT, also=['root-wrong-file-system-type'], end=DRACUT)
def _(b):
    """dracut, the magic number in the ext4 superblock was overwritten, root=/dev/vda3 rootfstype=ext4"""
    d = b.copy('base13.img')
    sh_text(f'dd if=/dev/zero of={d} bs=1 seek={66 * MIB + 1024 + 56} count=2 conv=notrunc status=none')
    b.disk(d)
    b.direct(f'root=/dev/vda3 rootfstype=ext4 ro {SHORT} {TTY}', 'kernel13', 'initrd13')


@rt('ext4-feature-of-the-future', 'ext4-feature-unsupported', general=MOUNT)
def _(b):
    """an incompatible ext4 feature bit that this kernel does not know is set"""
    f = b.small_root(options='-O ^metadata_csum')
    with open(f, 'r+b') as d:
        d.seek(1024 + 0x60)
        v = int.from_bytes(d.read(4), 'little') | 0x40000000
        d.seek(1024 + 0x60)
        d.write(v.to_bytes(4, 'little'))
    b.disk(f)
    b.direct(f'root=/dev/vda rootfstype=ext4 ro {TTY}')


@rt('ext4-journal-overwritten', 'ext4-journal-damaged', general=MOUNT)
def _(b):
    """the first block of the ext4 journal was overwritten and the file system was not clean"""
    f = b.small_root(options='-O ^metadata_csum,^metadata_csum_seed')
    import subprocess
    first = subprocess.run(['debugfs', '-R', 'blocks <8>', str(f)], capture_output=True, text=True).stdout.split()[0]
    size = 1024 if int(subprocess.run(f"dumpe2fs -h {f} 2>/dev/null | awk '/^Block size/ {{print $3}}'", shell=True, capture_output=True, text=True).stdout) == 1024 else 4096
    sh_text(f'dd if=/dev/urandom of={f} bs={size} seek={first} count=4 conv=notrunc status=none; debugfs -w -R "feature needs_recovery" {f} 2>/dev/null')
    b.disk(f, bus='ahci')
    b.direct(f'root=/dev/sda rootfstype=ext4 ro {TTY}')


@rt('xfs-superblock-overwritten', 'xfs-superblock-damaged', general=MOUNT, also=['root-wrong-file-system-type'], end=DRACUT)
def _(b):
    """dracut, the start of an XFS root file system was overwritten, rootfstype=xfs"""
    f = b.small_root(kind='xfs', size=320)
    sh_text(f'dd if=/dev/urandom of={f} bs=512 count=1 conv=notrunc status=none')
    b.disk(f)
    b.direct(f'root=/dev/vda rootfstype=xfs ro {SHORT} {TTY}', 'kernel13', 'initrd13')


@rt('xfs-feature-of-the-future', 'xfs-feature-unsupported', general=MOUNT)
def _(b):
    """XFS with an incompatible feature bit that this kernel does not know (set with xfs_db)"""
    f = b.small_root(kind='xfs', size=320)
    sh_text(f'xfs_db -x -c "sb 0" -c "write -d features_incompat 0x4003" {f} >/dev/null')
    b.disk(f)
    b.direct(f'root=/dev/vda rootfstype=xfs ro {TTY}')


@rt('xfs-log-damaged', 'xfs-log-damaged', general=MOUNT)
def _(b):
    """the XFS log was overwritten with noise"""
    import subprocess
    f = b.small_root(kind='xfs', size=320)
    start = subprocess.run(['xfs_db', '-c', 'sb 0', '-c', 'p logstart', '-c', 'convert fsblock $(x) byte', str(f)], capture_output=True, text=True).stdout
    n = int(re.search(r'logstart = (\d+)', start)[1])
    byte = subprocess.run(['xfs_db', '-c', f'convert fsblock {n} byte', str(f)], capture_output=True, text=True).stdout
    at = int(re.search(r'\((\d+)\)', byte)[1])
    sh_text(f'head -c 4M /dev/urandom | dd of={f} bs=4096 seek={at // 4096} conv=notrunc status=none')
    b.disk(f, bus='nvme')
    b.direct(f'root=/dev/nvme0n1 rootfstype=xfs ro {TTY}')


@rt('btrfs-second-device-missing', 'btrfs-device-missing', general=MOUNT)
def _(b):
    """btrfs over two disks (raid0), the second disk is not attached"""
    x, y = b.dir / 'b1.img', b.dir / 'b2.img'
    sh_text(f'truncate -s 200M {x} {y}; mkfs.btrfs -q -d raid0 -m raid0 {x} {y}')
    b.disk(x)
    b.direct(f'root=/dev/vda rootfstype=btrfs ro {TTY}')


@rt('btrfs-subvolume-gone', 'btrfs-subvolume-wrong', general=MOUNT)
def _(b):
    """btrfs, rootflags=subvol=@rootfs names a subvolume that does not exist"""
    b.disk(b.small_root(kind='btrfs', size=150))
    b.direct(f'root=/dev/vda rootfstype=btrfs rootflags=subvol=@rootfs ro {TTY}')


@rt('dracut-btrfs-tree-damaged', 'btrfs-tree-damaged', general=['root-mount-fails', 'initramfs-ends-in-shell'], end=DRACUT)
def _(b):
    """btrfs whose tree blocks (single copy of the metadata) were overwritten, dracut"""
    f = b.small_root(kind='btrfs', size=150, options='-m single')
    import subprocess
    dump = subprocess.run(['btrfs', 'inspect-internal', 'dump-super', str(f)], capture_output=True, text=True).stdout
    root = int(re.search(r'^root\s+(\d+)', dump, re.M)[1])
    tree = subprocess.run(['btrfs-map-logical', '-l', str(root), str(f)], capture_output=True, text=True).stdout
    phys = int(re.search(r'physical (\d+)', tree)[1])
    sh_text(f'dd if=/dev/urandom of={f} bs=4096 seek={phys // 4096} count=4 conv=notrunc status=none')
    b.disk(f)
    b.direct(f'root=/dev/vda rootfstype=btrfs ro {SHORT} {TTY}', 'kernel13', 'initrd13')


@rt('root-type-wrong', 'root-wrong-file-system-type', general=MOUNT)
def _(b):
    """rootfstype=btrfs for a root file system that is ext4"""
    b.disk()
    b.direct(f'{ROOT} rootfstype=btrfs ro {TTY}')


@rt('root-option-refused', 'root-mount-option-refused', general=MOUNT)
def _(b):
    """rootflags= with an option that ext4 does not know"""
    b.disk(bus='nvme')
    b.direct(f'{ROOT} rootflags=compress=zstd ro {TTY}')


@rt('dracut-root-option-refused', 'root-mount-option-refused', general=MOUNT, end=DRACUT)
def _(b):
    """dracut with systemd, rootflags= with an option that ext4 does not know"""
    b.disk('base13.img', bus='ahci')
    b.direct(f'{ROOT} rootflags=subvol=@ ro {SHORT} {TTY}', 'kernel13', 'initrd13')


@rt('root-is-data-partition', 'root-is-wrong-partition', general=['initramfs-ends-in-shell'], also=['init-missing'], end=SHELL)
def _(b):
    """root= names a data partition: it can be mounted and has no init"""
    b.disk(b.small_root(lambda t: (t / 'parts.txt').write_text('lamps\n')))
    b.direct(f'root=/dev/vda ro {TTY}')


@rt('dracut-root-without-os-release', 'switch-root-fails', general=['initramfs-ends-in-shell', 'emergency-mode-entered'], also=['root-is-wrong-partition', 'init-missing'], end=DRACUT + ['Freezing', 'reezing execution'])
def _(b):
    """dracut with systemd, root= names a data partition that is no operating system"""
    b.disk(b.small_root(lambda t: (t / 'parts.txt').write_text('lamps\n')))
    b.direct(f'root=/dev/vda ro {SHORT} {TTY}', 'kernel13', 'initrd13')


@rt('root-fsck-by-hand', 'fsck-fails-root', general=['emergency-mode-entered', 'unit-fails'], also=['fsck-wants-a-person'], stage='userland', end=['or press Control-D to continue'])
def _(b):
    """the root file system has errors that fsck does not repair unasked (a directory was overwritten)"""
    d = b.copy('base12.img')
    sh_text(f"l=$(losetup --show -f -o {66 * MIB} {d}); debugfs -w -R 'clri /etc/init.d' $l 2>/dev/null; debugfs -w -R 'clri /var/lib' $l 2>/dev/null; debugfs -w -R 'ssv state 2' $l 2>/dev/null; losetup -d $l")
    b.disk(d)
    b.direct(f'{ROOT} ro {TTY}')


@rt('nfs-root-unreachable', 'network-root-unreachable', general=['root-device-never-appears', 'root-mount-fails'], end=[r'\(initramfs\) '], quiet=60, limit=130)
def _(b):
    """initramfs-tools, root over NFS, the network card gets an address and the server does not answer"""
    b.network = True
    b.args += ['-nic', 'user,model=virtio-net-pci,restrict=on']
    b.direct(f'root=/dev/nfs nfsroot=10.0.2.77:/srv/lantern ip=dhcp ro {TTY}')


@rt('nfs-root-no-dhcp', 'network-root-unreachable', general=['root-device-never-appears', 'root-mount-fails'], end=[r'no response after 3 secs - giving up', r'\(initramfs\) '], quiet=60, limit=100)
def _(b):
    """initramfs-tools, root over NFS, nobody answers DHCP"""
    b.network = True
    b.args += ['-netdev', 'hubport,id=n0,hubid=7', '-device', 'e1000,netdev=n0']
    b.direct(f'root=/dev/nfs nfsroot=10.0.2.77:/srv/lantern ip=dhcp ro {TTY}')


@rt('live-medium-gone', 'live-medium-not-found', end=SHELL, general=['initramfs-ends-in-shell'], limit=240, quiet=110)
def _(b):
    """live system, the stick that holds filesystem.squashfs is not there"""
    b.memory = 512
    b.disk(bus='ahci')
    b.direct(f'boot=live components {TTY}', initrd='initrd12.live')


@rt('live-image-damaged', 'live-image-damaged', end=SHELL + ['Kernel panic', 'SQUASHFS error(.|\n)*SQUASHFS error(.|\n)*SQUASHFS error'], general=['initramfs-ends-in-shell'], limit=240, quiet=110)
def _(b):
    """live system on a USB stick, the squashfs image is damaged in the middle and at its tables"""
    t = b.dir / 'lt'
    (t / 'live').mkdir(parents=True)
    src = b.dir / 'sq'
    for d in 'bin dev etc proc run sys tmp var lib sbin'.split():
        (src / d).mkdir(parents=True)
    shutil.copy(LAB / 'root12/bin/busybox', src / 'sbin/init')
    (src / 'lib/noise').write_bytes(bytes(range(256)) * 20000)
    sq = t / 'live/filesystem.squashfs'
    sh_text(f'mksquashfs {src} {sq} -quiet -no-progress -comp zstd >/dev/null')
    n = sq.stat().st_size
    with open(sq, 'r+b') as f:
        f.seek(200)
        f.write(b'\x5a' * (n - 4096 - 200 if n > 8192 else n // 2))
    f = b.dir / 'stick.img'
    sh_text(f'truncate -s 48M {f}; mkfs.vfat -F 32 {f} >/dev/null; mcopy -s -i {f} {t}/live ::/')
    b.memory = 512
    b.disk(f, bus='usb')
    b.direct(f'boot=live components {TTY}', initrd='initrd12.live')


@rt('initramfs-script-broken', 'initramfs-script-fails', general=['kernel-panics', 'initramfs-ends-in-shell', 'init-exits'], end=SHELL + ['end Kernel panic'])
def _(b):
    """initramfs-tools, a syntax error in scripts/functions after an edit by hand"""
    def edit(t):
        f = t / 'scripts/functions'
        f.write_text(f.read_text().replace('maybe_break()\n{', 'maybe_break()\n{{ if [ x = x ; fi }', 1) + '\nif [ -n "$ROOT" ]; then\n')
    b.disk()
    b.direct(f'{ROOT} ro {TTY}', initrd=b.initrd(edit))


@rt('usr-on-missing-disk', 'usr-on-separate-disk-missing', general=MOUNT + ['root-device-never-appears'], limit=150)
def _(b):
    """/usr is on a separate disk (fstab) that is gone"""
    def edit(r):
        f = r / 'etc/fstab'
        f.write_text(f.read_text() + f'UUID={OTHER} /usr ext4 ro 0 2\n')
    b.disk(b.root(edit))
    b.direct(f'{ROOT} ro rootdelay=5 {TTY}')


# --- volumes: needs "lab store" ---------------------------------------------------------------------------------


@rt('lvm-group-not-there', 'lvm-volume-group-not-found', general=VOLUME, also=['lvm-physical-volume-missing', 'lvm-not-in-initramfs'])
def _(b):
    """root on LVM, no disk of the volume group is attached"""
    b.disk()
    b.direct(f'root=/dev/mapper/lantern-root ro rootdelay=5 {TTY}')


@rt('lvm-one-disk-missing', 'lvm-physical-volume-missing', general=VOLUME, also=['lvm-volume-group-not-found', 'lvm-not-in-initramfs'])
def _(b):
    """root on an LVM volume over two disks, the second disk is not attached"""
    b.disk('store/pv1.img')
    b.direct(f'root=/dev/mapper/lantern-root ro rootdelay=5 {TTY}')


@rt('lvm-tools-not-in-initramfs', 'lvm-not-in-initramfs', general=VOLUME, also=['lvm-volume-group-not-found', 'lvm-physical-volume-missing'])
def _(b):
    """root on LVM, both disks attached, the initramfs was made without the LVM tools"""
    b.disk('store/pv1.img')
    b.disk('store/pv2.img')
    def edit(t):
        for n in ('usr/sbin/lvm', 'usr/sbin/dmsetup', 'scripts/local-top/lvm2', 'scripts/local-block/lvm2'):
            (t / n).unlink(missing_ok=True)
        for o in ('scripts/local-top/ORDER', 'scripts/local-block/ORDER'):
            f = t / o
            if f.exists():
                f.write_text(''.join(l for l in f.read_text().splitlines(True) if 'lvm2' not in l))
    b.direct(f'root=/dev/mapper/lantern-root ro rootdelay=5 {TTY}', initrd=b.initrd(edit))


@rt('lvm-thin-metadata-damaged', 'lvm-thin-pool-damaged', general=VOLUME)
def _(b):
    """root on an LVM thin volume, the metadata of the pool was overwritten"""
    b.disk('store/thin.img')
    b.direct(f'root=/dev/mapper/bench-root ro rootdelay=5 {TTY}')


@rt('raid-one-of-three-members', 'raid-array-degraded-not-started', general=VOLUME)
def _(b):
    """root on RAID 5 over three disks, only one is attached"""
    b.disk('store/r5a.img')
    b.direct(f'root=/dev/md0 ro rootdelay=6 {TTY}', initrd=b.initrd(md_conf))


def md_conf(t):
    (t / 'etc/mdadm').mkdir(parents=True, exist_ok=True)
    (t / 'etc/mdadm/mdadm.conf').write_text('HOMEHOST <system>\nARRAY /dev/md0 metadata=1.2 UUID=1a2b3c4d:5e6f7081:92a3b4c5:d6e7f809\n')


@rt('raid-no-array-known', 'raid-array-not-assembled', general=VOLUME)
def _(b):
    """root on /dev/md0, no disk carries an array any more"""
    b.disk()
    b.direct(f'root=/dev/md0 ro rootdelay=6 {TTY}')


CRYPT = f'root=/dev/mapper/lantern_crypt ro rootdelay=5 {TTY}'


@rt('crypt-source-missing', 'encrypted-source-missing', general=VOLUME, limit=120)
def _(b):
    """encrypted root, the disk that is named in crypttab is not attached"""
    b.disk()
    b.direct(CRYPT, initrd='initrd12.crypt')


@rt('crypt-passphrase-refused', 'encryption-passphrase-refused', general=VOLUME, limit=180, quiet=60)
def _(b):
    """encrypted root, a wrong passphrase typed three times"""
    b.disk('store/luks.img')
    for _ in range(3):
        b.type('Please unlock disk [^\n]*: ', 'sunflower\r', 2)
    b.direct(CRYPT, initrd='initrd12.crypt')


@rt('crypt-header-overwritten', 'encryption-header-damaged', general=VOLUME, limit=120, end=SHELL + ['is not a valid LUKS device'])
def _(b):
    """encrypted root named by device, the LUKS header was overwritten"""
    f = b.copy('store/luks.img')
    sh_text(f'head -c 20M /dev/zero | dd of={f} conv=notrunc status=none')
    def edit(t):
        (t / 'cryptroot/crypttab').write_text('lantern_crypt /dev/vda none luks,initramfs\n')
    b.disk(f)
    b.direct(CRYPT, initrd=b.initrd(edit, 'initrd12.crypt'))


@rt('crypt-module-missing', 'encryption-module-missing', general=VOLUME, limit=120, end=SHELL + ['Please unlock disk [^\n]*: (.|\n)*Please unlock disk'])
def _(b):
    """encrypted root, dm-crypt is missing in the initramfs, right passphrase typed"""
    b.disk('store/luks.img')
    b.type('Please unlock disk [^\n]*: ', 'lantern\r', 2)
    b.direct(CRYPT, initrd=b.initrd(without('dm-crypt'), 'initrd12.crypt'))


@rt('crypt-table-missing', 'encryption-table-missing', general=VOLUME)
def _(b):
    """encrypted root, the initramfs holds no crypttab"""
    b.disk('store/luks.img')
    b.direct(CRYPT, initrd='initrd12')
