"""More boots that reach the login prompt: other roots, other media, other arguments."""
import shutil
from bench import LAB, ROOT, TTY, sh, sh_text
from scenes.healthy import good


@good('healthy-encrypted-lvm', limit=300)
def _(b):
    """Debian 12 on LVM inside an encrypted disk, the passphrase typed rightly at the second try"""
    b.disk('store/full.img', bus='ahci')
    b.type('Please unlock disk [^\n]*: ', 'lanterm\r', 2)
    b.type('Please unlock disk [^\n]*: ', 'lantern\r', 2)
    b.direct(f'root=/dev/mapper/shelf-root ro {TTY}', initrd='initrd12.crypt')


@good('healthy-encrypted-quiet', limit=300)
def _(b):
    """Debian 12 with quiet on LVM inside an encrypted NVMe disk, passphrase typed"""
    b.disk('store/full.img', bus='nvme')
    b.type('Please unlock disk [^\n]*: ', 'lantern\r', 2)
    b.direct(f'root=/dev/mapper/shelf-root ro quiet {TTY}', initrd='initrd12.crypt')


def live_stick(b, tree='root12'):
    """A stick with a live system: FAT, live/filesystem.squashfs. The image is made once and kept."""
    sq, stick = LAB / 'live.squashfs', b.dir / 'stick.img'
    if not sq.exists():
        sh('mksquashfs', LAB / tree, LAB / 'live.part', '-quiet', '-no-progress', '-comp', 'lz4', '-processors', '1', '-e', 'boot')
        (LAB / 'live.part').rename(sq)
    sh_text(f'truncate -s $(($(stat -c %s {sq}) / 1048576 + 40))M {stick}; mkfs.vfat -F 32 -n LANTERNLIVE {stick} >/dev/null; '
            f'mmd -i {stick} ::/live; mcopy -i {stick} {sq} ::/live/filesystem.squashfs')
    return stick


@good('healthy-live-usb', limit=300)
def _(b):
    """a live system (squashfs and overlay) from a USB stick, reaches the login prompt"""
    b.memory = 768
    b.disk(live_stick(b), bus='usb')
    b.direct(f'boot=live components {TTY}', initrd='initrd12.live')


@good('healthy-btrfs-root', limit=250)
def _(b):
    """Debian 12 on btrfs with the root in the subvolume that is mounted by default, virtio disk"""
    tree, image = b.dir / 'bt', b.dir / 'btrfs.img'
    sh('cp', '-a', LAB / 'root12', tree)
    (tree / 'etc/fstab').write_text('LABEL=shelf / btrfs defaults 0 0\n')
    sh_text(f'truncate -s 1900M {image}; mkfs.btrfs -q -L shelf --rootdir {tree} {image}')
    shutil.rmtree(tree)
    b.disk(image)
    b.direct(f'root=LABEL=shelf ro {TTY}')


@good('healthy-systemd-boot-quiet')
def _(b):
    """Debian 13 through UEFI firmware and systemd-boot with quiet, AHCI disk"""
    b.uefi()

    def edit(e):
        f = e / 'loader/entries/debian.conf'
        f.write_text(f.read_text().replace(' ro ', ' ro quiet '))
    b.disk(b.esp(edit, 'base13.img'), bus='ahci')


@good('healthy-two-processors-network')
def _(b):
    """two processors, a network card that gets an address from DHCP (systemd-networkd)"""
    def edit(r):
        (r / 'etc/systemd/network').mkdir(exist_ok=True)
        (r / 'etc/systemd/network/lan.network').write_text('[Match]\nName=en*\n[Network]\nDHCP=yes\n')
        d = r / 'etc/systemd/system/multi-user.target.wants'
        (d / 'systemd-networkd.service').symlink_to('/lib/systemd/system/systemd-networkd.service')
    b.network = True
    b.args += ['-smp', '2', '-nic', 'user,model=e1000e,restrict=on']
    b.disk(b.root(edit), bus='nvme')
    b.direct(f'{ROOT} ro {TTY}')


@good('healthy-second-disk-and-swap')
def _(b):
    """Debian 13, a data disk with a file system check and swap space in fstab, both there"""
    data, swap = b.small_root(), b.dir / 'swap.img'
    sh_text(f'truncate -s 64M {swap}; mkswap -q {swap} >/dev/null')

    def edit(r):
        f = r / 'etc/fstab'
        f.write_text(f.read_text() + '/dev/vdb /srv/parts ext4 defaults 0 2\n/dev/vdc none swap sw 0 0\n')
    b.disk(b.root(edit, 'base13.img'))
    b.disk(data)
    b.disk(swap)
    b.direct(f'{ROOT} ro {TTY}', 'kernel13', 'initrd13')


@good('healthy-old-kernel-arguments')
def _(b):
    """Debian 12 with arguments of an old installation that are harmless (nosplash, vga=791, an unknown word), IDE disk"""
    b.machine = 'pc'
    b.disk(bus='ide')
    b.direct(f'{ROOT} ro nosplash vga=normal lanternmode=7 panic=30 net.ifnames=0 {TTY}')


@good('healthy-journal-replayed')
def _(b):
    """Debian 12 after a power cut: the journal of the root file system is replayed and orphans are cleaned"""
    d = b.copy('base12.img')
    sh_text(f'l=$(losetup --show -f -o {66 * 1048576} {d}); trap "losetup -d $l" EXIT; debugfs -w -R "feature needs_recovery" $l 2>/dev/null')
    b.disk(d, bus='ahci')
    b.direct(f'{ROOT} ro {TTY}')
