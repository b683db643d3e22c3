"""Faults that end before any loader speaks."""
import shutil
from bench import MIB, scene, sh, sh_text

G = ['firmware-ends-without-handing-over']
NOTHING = [r'UEFI Interactive Shell', r'No bootable option', r'No bootable device', 'Press any key']


def fw(name, label, also=(), stage='firmware', general=G, end=NOTHING, **more):
    return scene(name, label, stage, general=general, also=also, end=end, linger=4, **more)


def blank(b, size=64):
    f = b.dir / 'blank.img'
    sh('truncate', '-s', f'{size}M', f)
    return f


@fw('uefi-no-disk-at-all', 'no-loader-on-any-disk', general=['no-bootable-entry-found', *G])
def _(b):
    """UEFI firmware (the build without a shell) on a machine without any disk"""
    b.uefi('OVMF_CODE_4M.secboot.fd', 'OVMF_VARS_4M.fd', smm=True)


@fw('uefi-empty-disk', 'no-loader-on-any-disk', also=['fallback-path-missing', 'esp-unreadable-by-firmware', 'disk-label-not-for-firmware-mode', 'stick-written-for-other-firmware-mode'], general=['no-bootable-entry-found', *G])
def _(b):
    """UEFI firmware with an empty AHCI disk"""
    b.uefi()
    b.disk(blank(b), bus='ahci')


@fw('bios-empty-disk', 'no-loader-on-any-disk', also=['disk-label-not-for-firmware-mode', 'stick-written-for-other-firmware-mode'], general=['no-bootable-entry-found', *G])
def _(b):
    """Legacy firmware with an empty disk"""
    b.machine = 'pc'
    b.disk(blank(b), bus='ide')


@fw('uefi-fallback-missing', 'fallback-path-missing', also=['no-loader-on-any-disk', 'no-bootable-entry-found', 'boot-entry-lost-from-nvram', 'esp-unreadable-by-firmware', 'stick-written-for-other-firmware-mode', 'disk-label-not-for-firmware-mode'])
def _(b):
    """UEFI, NVRAM without entries, loader only at \\EFI\\debian and no \\EFI\\BOOT\\BOOTX64.EFI on a USB stick"""
    b.uefi('OVMF_CODE_4M.secboot.fd', smm=True)
    def edit(e):
        (e / 'EFI/debian').mkdir()
        shutil.move(e / 'EFI/BOOT/BOOTX64.EFI', e / 'EFI/debian/grubx64.efi')
        shutil.rmtree(e / 'EFI/BOOT')
    b.disk(b.esp(edit), bus='usb')


@fw('uefi-esp-not-fat', 'esp-unreadable-by-firmware', also=['fallback-path-missing', 'no-loader-on-any-disk', 'no-bootable-entry-found', 'disk-label-not-for-firmware-mode', 'stick-written-for-other-firmware-mode'])
def _(b):
    """UEFI, the ESP was formatted with ext4, NVMe disk"""
    b.uefi()
    d = b.copy('base12.img')
    sh_text(f'mke2fs -q -F -t ext4 -E offset={MIB} {d} 64M')
    b.disk(d, bus='nvme')


@fw('bios-gpt-without-boot-code', 'disk-label-not-for-firmware-mode', also=['stick-written-for-other-firmware-mode', 'legacy-loader-chain-broken'], quiet=25)
def _(b):
    """Legacy firmware and a GPT disk made for UEFI only: protective MBR without boot code"""
    d = b.copy('base13.img')
    b.machine = 'pc'
    b.disk(d, bus='ide')


@fw('uefi-loader-of-other-architecture', 'loader-image-wrong-architecture')
def _(b):
    """UEFI for x86-64, BOOTX64.EFI is an image for 64-bit ARM (machine type 0xaa64 in the header)"""
    b.uefi()
    def edit(e):
        f = e / 'EFI/BOOT/BOOTX64.EFI'
        d = bytearray(f.read_bytes())
        pe = int.from_bytes(d[0x3c:0x40], 'little')
        d[pe + 4:pe + 6] = b'\x64\xaa'
        f.write_bytes(d)
    b.disk(b.esp(edit))


@fw('uefi-exception-in-loader', 'firmware-exception', end=['X64 Exception'], general=G)
def _(b):
    """UEFI, the first bytes of the loader's code are an invalid instruction (damaged file)"""
    b.uefi()
    def edit(e):
        f = e / 'EFI/BOOT/BOOTX64.EFI'
        d = bytearray(f.read_bytes())
        pe = int.from_bytes(d[0x3c:0x40], 'little')
        entry = int.from_bytes(d[pe + 40:pe + 44], 'little')
        sections = pe + 24 + int.from_bytes(d[pe + 20:pe + 22], 'little')
        for i in range(int.from_bytes(d[pe + 6:pe + 8], 'little')):
            s = sections + 40 * i
            size, va, rawsize, raw = (int.from_bytes(d[s + k:s + k + 4], 'little') for k in (8, 12, 16, 20))
            if va <= entry < va + max(size, rawsize):
                d[raw + entry - va:raw + entry - va + 2] = b'\x0f\x0b'
        f.write_bytes(d)
    b.disk(b.esp(edit))


@fw('uefi-secure-boot-unsigned-loader', 'secure-boot-refuses-loader')
def _(b):
    """UEFI with Secure Boot on and the usual keys, grub unsigned"""
    b.uefi('OVMF_CODE_4M.ms.fd', 'OVMF_VARS_4M.ms.fd', smm=True)
    b.disk()


@fw('uefi-network-no-answer', 'network-boot-no-answer', end=NOTHING, limit=240, quiet=120)
def _(b):
    """UEFI without a disk, network card on a net where nobody answers DHCP"""
    b.uefi('OVMF_CODE_4M.secboot.fd', smm=True)
    b.network = True
    b.args += ['-netdev', 'hubport,id=n0,hubid=7', '-device', 'virtio-net-pci,netdev=n0']


@fw('bios-network-no-answer', 'network-boot-no-answer', limit=240, quiet=90)
def _(b):
    """Legacy firmware without a disk, network card on a net where nobody answers DHCP"""
    b.machine, b.network = 'pc', True
    b.args += ['-netdev', 'hubport,id=n0,hubid=7', '-device', 'e1000,netdev=n0']
