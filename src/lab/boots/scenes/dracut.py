"""More faults on the way to the root file system under dracut (Debian 13)."""
from bench import NAMES, ROOT, TTY, scene
from scenes.root import DRACUT, GONE, MOUNT, OTHER, SHORT, VOLUME, rt, without

LUKS = NAMES['LUKS_UUID']


def start(b, append, initrd='initrd13'):
    b.direct(f'{append} ro {SHORT} {TTY}', 'kernel13', initrd)


@rt('dracut-disk-renamed', 'root-device-name-changed', end=DRACUT)
def _(b):
    """dracut with systemd, root=/dev/sda3 while the disk is an NVMe disk now"""
    b.disk('base13.img', bus='nvme')
    start(b, 'root=/dev/sda3')


@rt('dracut-wrong-label-quiet', 'root-id-on-no-disk', end=DRACUT)
def _(b):
    """dracut with systemd and quiet, root=LABEL= with a label that no disk has, AHCI disk"""
    b.disk('base13.img', bus='ahci')
    start(b, 'quiet root=LABEL=workshop-root')


@rt('dracut-without-nvme', 'nvme-driver-not-in-initramfs', also=['root-id-on-no-disk'], end=DRACUT)
def _(b):
    """dracut, the modules nvme and nvme-core are missing in the initramfs, root disk is NVMe"""
    b.disk('base13.img', bus='nvme')
    start(b, ROOT, b.initrd(without('nvme', 'nvme-core'), 'initrd13'))


@rt('dracut-without-virtio-no-systemd', 'virtio-driver-not-in-initramfs', also=['root-id-on-no-disk'], end=DRACUT)
def _(b):
    """dracut without systemd, the module virtio_blk is missing in the initramfs, root disk is virtio"""
    b.disk('base13.img')
    start(b, ROOT, b.initrd(without('virtio_blk'), 'initrd13.nosystemd'))


@rt('dracut-lvm-group-not-there', 'lvm-volume-group-not-found', general=VOLUME, end=DRACUT)
def _(b):
    """dracut, root on LVM (rd.lvm.lv=), no disk of the volume group is attached"""
    b.disk('base13.img')
    start(b, 'root=/dev/mapper/lantern-root rd.lvm.lv=lantern/root')


@rt('dracut-lvm-one-disk-missing', 'lvm-physical-volume-missing', general=VOLUME, end=DRACUT)
def _(b):
    """dracut without systemd, root on an LVM volume over two disks, the second disk is not attached"""
    b.disk('store/pv1.img')
    start(b, 'root=/dev/mapper/lantern-root rd.lvm.lv=lantern/root', 'initrd13.nosystemd')


@rt('dracut-crypt-disk-missing', 'encrypted-source-missing', general=VOLUME, end=DRACUT)
def _(b):
    """dracut with systemd, rd.luks.uuid= names an encrypted disk that is not attached"""
    b.disk('base13.img')
    start(b, f'root=/dev/mapper/luks-{LUKS} rd.luks.uuid={LUKS}')


@rt('dracut-crypt-passphrase-refused', 'encryption-passphrase-refused', general=VOLUME, end=DRACUT)
def _(b):
    """dracut with systemd, a wrong passphrase for the encrypted root typed three times"""
    b.disk('store/luks.img')
    for _ in range(3):
        b.type('enter passphrase for disk [^\n]*:', 'sunflower\r', 3)
    start(b, f'root=/dev/mapper/luks-{LUKS} rd.luks.uuid={LUKS}')


@rt('dracut-btrfs-subvolume-gone', 'btrfs-subvolume-wrong', general=MOUNT, end=DRACUT)
def _(b):
    """dracut with systemd, btrfs, rootflags=subvol=@rootfs names a subvolume that does not exist"""
    b.disk(b.small_root(kind='btrfs', size=150))
    start(b, 'root=/dev/vda rootfstype=btrfs rootflags=subvol=@rootfs')


@rt('dracut-left-break-argument', 'kernel-argument-breaks-boot', general=['initramfs-ends-in-shell'], end=DRACUT)
def _(b):
    """dracut without systemd, rd.break=pre-mount was left on the command line after an earlier trouble"""
    b.disk('base13.img')
    start(b, f'{ROOT} rd.break=pre-mount', 'initrd13.nosystemd')


@scene('rdsosreport-wrong-uuid', 'root-id-on-no-disk', 'root', general=GONE, end=['REPORT-ENDED\r?\n'], limit=300, quiet=110)
def _(b):
    """dracut, root=UUID= on no disk; rdsosreport.txt printed in the emergency shell to a second serial line"""
    b.second = True
    b.disk('base13.img', bus='ahci')
    b.type(r'Press Enter (for (emergency shell|maintenance)|to continue)|or press Control-D', '\r', 2)
    b.type(r'# ', 'cat /run/initramfs/rdsosreport.txt > /dev/ttyS1; sleep 2; echo REPORT-"ENDED"\r', 2)
    start(b, f'root=UUID={OTHER} systemd.setenv=SYSTEMD_SULOGIN_FORCE=1')
