"""Arguments of the kernel, and kernel or loader files, that stop a boot."""
import shutil
from bench import ROOT, TTY, scene, sh
from scenes.kernel import kn
from scenes.loader import G, kver, ld
from scenes.odd import odd
from scenes.root import rt

ARG = 'kernel-argument-breaks-boot'


@rt('initramfs-left-break-argument', ARG, general=['initramfs-ends-in-shell'])
def _(b):
    """initramfs-tools, break=mount was left on the command line after an earlier trouble"""
    b.disk()
    b.direct(f'{ROOT} ro break=mount {TTY}')


@rt('initramfs-driver-blacklisted', ARG)
def _(b):
    """modprobe.blacklist=ahci was left on the command line, the root disk is on AHCI"""
    b.disk(bus='ahci')
    b.direct(f'{ROOT} ro modprobe.blacklist=ahci rootdelay=5 {TTY}')


@rt('initramfs-pci-off', ARG)
def _(b):
    """pci=off on the command line: no disk is found"""
    b.disk()
    b.direct(f'{ROOT} ro pci=off rootdelay=5 {TTY}')


@kn('kernel-huge-pages-eat-memory', ARG, also=['kernel-out-of-memory-at-boot'], stage='devices', quiet=60)
def _(b):
    """hugepages=300 takes the whole memory of a machine with 448 MB"""
    b.disk(bus='nvme')
    b.direct(f'{ROOT} ro hugepages=300 {TTY}')


@scene('userland-left-rescue-argument', ARG, 'userland', general=['emergency-mode-entered'], end=['or press Control-D'], quiet=80)
def _(b):
    """systemd.unit=rescue.target was left on the command line after an earlier repair"""
    b.disk(bus='ahci')
    b.direct(f'{ROOT} ro systemd.unit=rescue.target {TTY}')


@scene('userland-target-argument-wrong', ARG, 'userland', general=['emergency-mode-entered'], also=['default-target-missing'], end=['or press Control-D', 'reezing'], quiet=80, linger=4)
def _(b):
    """systemd.unit=workshop.target on the command line names a target that does not exist, Debian 13"""
    b.disk('base13.img')
    b.direct(f'{ROOT} ro systemd.unit=workshop.target {TTY}', 'kernel13', 'initrd13')


@rt('initramfs-locked-down', 'kernel-lockdown-refuses', also=['unsigned-module-refused', 'virtio-driver-not-in-initramfs'])
def _(b):
    """lockdown=integrity, and the module virtio_blk has lost its signature"""
    def edit(t):
        sh('strip', '--strip-debug', next((t / 'usr/lib/modules').rglob('virtio_blk.ko')))
    b.disk()
    b.direct(f'{ROOT} ro rootdelay=5 lockdown=integrity {TTY}', initrd=b.initrd(edit))


def damaged_kernel(b, first=4000000, length=200000):
    f = b.copy('kernel12', 'damaged')
    with open(f, 'r+b') as d:
        d.seek(first)
        d.write(b'\x5a' * length)
    return f


@kn('kernel-packed-data-damaged', 'kernel-image-damaged', general=['kernel-never-answers-after-loader'], end=['System halted'], quiet=30, limit=60)
def _(b):
    """the middle of the packed kernel was overwritten; early messages are on (earlyprintk=ttyS0)"""
    b.disk()
    b.direct(f'{ROOT} ro earlyprintk=ttyS0 {TTY}', kernel=damaged_kernel(b))


@ld('grub-kernel-packed-data-damaged', 'kernel-image-damaged', general=['kernel-never-answers-after-loader'], end=['System halted'], stage='kernel', limit=100)
def _(b):
    """Legacy grub, the middle of the packed kernel was overwritten; early messages are on"""
    def edit(r):
        shutil.copy(damaged_kernel(b), r / f'boot/vmlinuz-{kver()}')
        f = r / 'boot/grub/grub.cfg'
        f.write_text(f.read_text().replace('console=ttyS0', 'earlyprintk=ttyS0 console=ttyS0'))
    b.machine = 'pc'
    b.disk(b.root(edit), bus='ide')


@ld('grub-kernel-empty', 'kernel-file-cut-short', end=['Press any key to continue'], also=['kernel-image-wrong-architecture', 'boot-partition-full', 'interrupted-upgrade'])
def _(b):
    """UEFI, the kernel file is empty (0 bytes), as a power cut during an update leaves it"""
    b.uefi()
    b.disk(b.root(lambda r: (r / f'boot/vmlinuz-{kver()}').write_bytes(b'')))


@ld('shim-second-stage-missing', 'loader-second-stage-missing', stage='loader', general=['firmware-ends-without-handing-over'] + G, end=['[Nn]ot [Ff]ound(.|\n)*([Nn]ot [Ff]ound|Press any key|Shell)'], quiet=30)
def _(b):
    """UEFI, shim is there as BOOTX64.EFI and grubx64.efi beside it is missing"""
    b.uefi('OVMF_CODE_4M.secboot.fd', smm=True)
    b.disk(b.esp(lambda e: shutil.copy('/usr/lib/shim/shimx64.efi.signed', e / 'EFI/BOOT/BOOTX64.EFI')))


@ld('systemd-boot-without-entries', 'loader-config-missing', general=G + ['firmware-ends-without-handing-over'], end=['No loader found'], quiet=20)
def _(b):
    """UEFI and systemd-boot, the folder with the entries is empty and the entry for the firmware's own menu is switched off"""
    b.uefi('OVMF_CODE_4M.secboot.fd', smm=True)

    def edit(e):
        (e / 'loader/entries/debian.conf').unlink()
        (e / 'loader/loader.conf').write_text('timeout 1\nauto-firmware no\n')
    b.disk(b.esp(edit, 'base13.img'))


@ld('systemd-boot-only-firmware-entry', 'loader-config-missing', general=G + ['firmware-ends-without-handing-over'], end=['starting Boot0000 "UiApp"'], quiet=20)
def _(b):
    """UEFI and systemd-boot, the folder with the entries is empty: the firmware's own menu is the only entry and opens"""
    b.uefi('OVMF_CODE_4M.secboot.fd', smm=True)
    b.disk(b.esp(lambda e: (e / 'loader/entries/debian.conf').unlink(), 'base13.img'))


@ld('grub-asks-for-a-user', 'loader-password-set', end=['no such text'], quiet=20)
def _(b):
    """grub.cfg asks for a user's name and password before it boots anything"""
    def edit(r):
        f = r / 'boot/grub/grub.cfg'
        f.write_text('insmod password\nset superusers="lamplighter"\npassword lamplighter wick\nexport superusers\nset timeout=0\nmenuentry "Workshop image" { echo booting; }\n')
    b.uefi()
    b.disk(b.root(edit))


@odd('odd-menu-waits-for-a-choice', 'loader', quiet=20, general=['loader-stops-at-prompt'])
def _(b):
    """grub shows its menu without a time limit and waits for a choice"""
    def edit(r):
        f = r / 'boot/grub/grub.cfg'
        f.write_text(f.read_text().replace('set timeout=1', 'set timeout=-1'))
    b.machine = 'pc'
    b.disk(b.root(edit), bus='ide')
