"""Faults that end in the boot loader."""
import shutil
from bench import HERE, LAB, MIB, NAMES, ROOT, TTY, scene, sh, sh_text

G = ['loader-stops-at-prompt']
PROMPT = [r'grub rescue> ?$', r'grub> ?$', r'grub>']


def ld(name, label, also=(), general=G, end=PROMPT, stage='loader', limit=90, **more):
    return scene(name, label, stage, general=general, also=also, end=end, limit=limit, quiet=more.pop('quiet', 30), linger=3, **more)


def kver():
    return (LAB / 'kver12').read_text().strip()


@ld('grub-without-config', 'loader-config-missing')
def _(b):
    """UEFI, grub.cfg was deleted"""
    b.uefi()
    b.disk(b.root(lambda r: (r / 'boot/grub/grub.cfg').unlink()))


@ld('grub-root-uuid-changed', 'loader-device-missing')
def _(b):
    """UEFI, the file system that holds /boot got a new UUID after the loader was installed"""
    b.uefi()
    d = b.copy('base12.img')
    sh_text(f'l=$(losetup --show -f -o {66 * MIB} {d}); trap "losetup -d $l" EXIT; e2fsck -fy $l >/dev/null 2>&1 || true; tune2fs -U 99999999-3333-4333-8333-121212121212 $l >/dev/null')
    b.disk(d)


@ld('grub-bios-file-system-gone', 'loader-file-system-unknown')
def _(b):
    """Legacy grub, the superblock of the /boot file system was overwritten"""
    d = b.copy('base12.img')
    sh_text(f'dd if=/dev/zero of={d} bs=1M seek=66 count=1 conv=notrunc status=none')
    b.machine = 'pc'
    b.disk(d, bus='ide')


@ld('grub-bios-file-system-too-new', 'loader-too-old-for-file-system', also=['loader-file-system-unknown'])
def _(b):
    """Legacy grub 2.06, the /boot file system has an ext4 feature (ea_inode) that this grub does not know"""
    d = b.copy('base12.img')
    sh_text(f'l=$(losetup --show -f -o {66 * MIB} {d}); trap "losetup -d $l" EXIT; e2fsck -fy $l >/dev/null 2>&1 || true; tune2fs -O ea_inode $l >/dev/null')
    b.disk(d, bus='ahci')


@ld('grub-uefi-normal-module-gone', 'loader-module-missing')
def _(b):
    """UEFI, /boot/grub/x86_64-efi was deleted"""
    b.uefi()
    b.disk(b.root(lambda r: shutil.rmtree(r / 'boot/grub/x86_64-efi')))


@ld('grub-bios-modules-gone', 'loader-module-missing')
def _(b):
    """Legacy grub, /boot/grub/i386-pc/normal.mod was deleted"""
    b.machine = 'pc'
    b.disk(b.root(lambda r: (r / 'boot/grub/i386-pc/normal.mod').unlink()), bus='ide')


@ld('grub-kernel-gone', 'kernel-file-missing', also=['stale-menu-entry-after-update'], end=[r'Press any key to continue'], stage='loader')
def _(b):
    """UEFI, the menu entry names a kernel file that was deleted"""
    b.uefi()
    b.disk(b.root(lambda r: (r / f'boot/vmlinuz-{kver()}').unlink()))


@ld('grub-old-kernel-entry', 'stale-menu-entry-after-update', also=['kernel-file-missing'], end=[r'Press any key to continue'])
def _(b):
    """UEFI, kernel and initramfs were replaced by a newer version, the menu was not written again"""
    b.uefi()
    def edit(r):
        for n in ('vmlinuz-', 'initrd.img-'):
            (r / f'boot/{n}{kver()}').rename(r / f'boot/{n}6.1.0-51-amd64')
    b.disk(b.root(edit))


@ld('grub-initrd-gone', 'initrd-file-missing', end=['end Kernel panic'], limit=120, stage='root', general=['kernel-panics', 'root-mount-fails'], also=['initramfs-not-loaded'])
def _(b):
    """UEFI, the initramfs file was deleted; grub goes on without it"""
    b.uefi()
    b.disk(b.root(lambda r: (r / f'boot/initrd.img-{kver()}').unlink()))


@ld('grub-kernel-for-other-machine', 'kernel-image-wrong-architecture', end=['Press any key to continue'])
def _(b):
    """Legacy grub, the kernel file is a program for RISC-V"""
    def edit(r):
        shutil.copy('/usr/share/qemu/opensbi-riscv64-generic-fw_dynamic.elf', r / f'boot/vmlinuz-{kver()}')
    b.disk(b.root(edit), bus='ahci')


@ld('grub-initrd-too-big', 'loader-out-of-memory', end=['Press any key to continue', 'end Kernel panic'], limit=100)
def _(b):
    """Legacy grub, an initramfs of 380 MB on a machine with 256 MB"""
    def edit(r):
        sh_text(f'head -c 380M /dev/urandom > {r}/boot/initrd.img-{kver()}')
    b.memory = 256
    b.disk(b.root(edit))


@ld('grub-environment-block-damaged', 'loader-environment-block-damaged')
def _(b):
    """UEFI, the first line of /boot/grub/grubenv was overwritten; the configuration takes the kernel's name from it"""
    b.uefi()
    def edit(r):
        (r / 'boot/grub/grubenv').write_bytes(b'lantern street workshop!\nkernel=/boot/vmlinuz\n'.ljust(1024, b'#'))
        (r / 'boot/grub/grub.cfg').write_text('load_env\nif [ -n "$kernel" ]; then\n  linux $kernel ro console=ttyS0\n  boot\nfi\n')
    b.disk(b.root(edit))


@ld('grub-disk-shorter-than-its-files', 'disk-read-beyond-end', end=['Press any key', 'grub rescue>', 'grub>'], limit=60)
def _(b):
    """Legacy grub, the disk ends (400 MB) before the blocks of the kernel file"""
    d = b.copy('base12.img')
    sh('truncate', '-s', '400M', d)
    b.machine = 'pc'
    b.disk(d, bus='ide')


def kernel_sector():
    """Sector of the kernel file on the disk (512 bytes), found with debugfs."""
    import subprocess
    from bench import LAB
    out = subprocess.run(['debugfs', '-R', f'blocks /boot/vmlinuz-{kver()}', f"{LAB / 'base12.img'}?offset={66 * MIB}"],
                         capture_output=True, text=True).stdout.split()
    return 66 * 2048 + int(out[500]) * 8


@ld('grub-disk-read-error', 'loader-disk-read-error', end=['Press any key', 'grub rescue>'], limit=60)
def _(b):
    """Legacy grub, reads of one sector of the kernel file fail (block layer error injection)"""
    c = b.dir / 'blkdebug.conf'
    c.write_text(f'[inject-error]\nevent = "none"\niotype = "read"\nerrno = "5"\nsector = "{kernel_sector()}"\nonce = "off"\n')
    b.machine = 'pc'
    b.disk(bus='ide', file=f"driver=blkdebug,config={c},image.driver=raw,image.file.driver=file,image.file.filename={b.copy('base12.img')}")


@ld('legacy-mbr-no-active-partition', 'legacy-firmware-wants-active-partition', also=['legacy-loader-chain-broken'], end=['Missing operating system'], quiet=15)
def _(b):
    """Legacy firmware, MBR code of syslinux on a disk without a bootable partition"""
    f = b.dir / 'mbr.img'
    sh_text(f'truncate -s 64M {f}; echo "2048,,83" | sfdisk -q {f}; dd if=/usr/lib/syslinux/mbr/mbr.bin of={f} conv=notrunc status=none')
    b.machine = 'pc'
    b.disk(f, bus='ide')


@ld('legacy-syslinux-without-config', 'legacy-loader-chain-broken', end=['boot: ?$'], general=G)
def _(b):
    """Legacy firmware, a stick with syslinux whose configuration file is missing"""
    f = b.dir / 'sl.img'
    sh_text(f'truncate -s 48M {f}; echo "2048,,c,*" | sfdisk -q {f}; mkfs.vfat --offset 2048 {f} 45000 >/dev/null; '
            f'syslinux -t {MIB} -i {f}; dd if=/usr/lib/syslinux/mbr/mbr.bin of={f} conv=notrunc status=none')
    b.machine = 'pc'
    b.disk(f, bus='ide')


@ld('grub-signatures-enforced', 'loader-signature-check-fails', end=['Press any key', 'grub>'])
def _(b):
    """UEFI, grub.cfg switches signature checking on, the kernel has no signature file"""
    b.uefi()
    def edit(r):
        f = r / 'boot/grub/grub.cfg'
        f.write_text('insmod pgp\ninsmod gcry_rsa\ninsmod linux\ninsmod echo\ninsmod search\nset check_signatures=enforce\n' + f.read_text())
    b.disk(b.root(edit))


@ld('shim-refuses-kernel', 'secure-boot-refuses-kernel', end=['Press any key'], limit=120, also=['loader-signature-check-fails'])
def _(b):
    """UEFI with Secure Boot, signed shim and grub, kernel whose bytes were changed after signing"""
    b.uefi('OVMF_CODE_4M.ms.fd', 'OVMF_VARS_4M.ms.fd', smm=True)
    def root(r):
        f = r / f'boot/vmlinuz-{kver()}'
        d = bytearray(f.read_bytes())
        d[1000000:1000016] = bytes(16)
        f.write_bytes(d)
    def esp(e):
        shutil.copy('/usr/lib/shim/shimx64.efi.signed', e / 'EFI/BOOT/BOOTX64.EFI')
        shutil.copy('/usr/lib/grub/x86_64-efi-signed/grubx64.efi.signed', e / 'EFI/BOOT/grubx64.efi')
        (e / 'EFI/debian').mkdir(exist_ok=True)
        (e / 'EFI/debian/grub.cfg').write_text(f"search.fs_uuid {NAMES['ROOT_UUID']} root\nset prefix=($root)/boot/grub\nconfigfile $prefix/grub.cfg\n")
    d = b.root(root)
    b.esp_of(d, esp)
    b.disk(d)


@ld('systemd-boot-entry-without-kernel', 'loader-entry-points-at-nothing', end=[r'Error (loading|opening|reading|preparing)', 'Failed to execute', r'linux: Not'], limit=60)
def _(b):
    """UEFI and systemd-boot, the entry names a kernel file that is not on the ESP"""
    b.uefi()
    b.disk(b.esp(lambda e: (e / 'debian/linux').rename(e / 'debian/linux.old'), 'base13.img'))


@ld('systemd-boot-entry-without-initrd', 'initrd-file-missing', also=['loader-entry-points-at-nothing'], end=[r'initrd: Not', 'Failed to', r'Error (loading|opening|reading|preparing)'], limit=60)
def _(b):
    """UEFI and systemd-boot, the entry names an initramfs that is not on the ESP"""
    b.uefi()
    b.disk(b.esp(lambda e: (e / 'debian/initrd.img').rename(e / 'debian/initrd.old'), 'base13.img'))


@ld('grub-modules-of-other-version', 'loader-and-modules-differ-in-version', also=['loader-module-missing'])
def _(b):
    """UEFI, the modules in /boot/grub belong to grub 2.12, the loader itself is 2.06"""
    b.uefi()
    def edit(r):
        for m in (LAB / 'grub13/usr/lib/grub/x86_64-efi').glob('*.mod'):
            shutil.copy(m, r / 'boot/grub/x86_64-efi')
    b.disk(b.root(edit))


@ld('grub-wrong-passphrase', 'loader-cannot-unlock-disk', end=['grub rescue>', 'grub>'], limit=120)
def _(b):
    """UEFI, /boot on an encrypted disk, wrong passphrase typed at grub's question"""
    b.uefi()
    cfg, efi = b.dir / 'early.cfg', b.dir / 'grub.efi'
    cfg.write_text(f"cryptomount -u {NAMES['LUKS_UUID'].replace('-', '')}\nset root=crypto0\nset prefix=(crypto0)/boot/grub\nnormal\n")
    sh('grub-mkimage', '-O', 'x86_64-efi', '-o', efi, '-c', cfg, '-p', '/boot/grub', 'part_gpt', 'cryptodisk', 'luks2', 'luks', 'gcry_rijndael', 'gcry_sha256', 'gcry_sha512', 'pbkdf2', 'ext2', 'normal', 'fat', 'search')
    b.disk(b.esp(lambda e: shutil.copy(efi, e / 'EFI/BOOT/BOOTX64.EFI')))
    b.disk('store/luks.img')
    b.type('Enter passphrase', 'wrong words\r', 2)


@ld('grub-then-silence', 'console-sent-elsewhere', end=['no such text'], general=['kernel-never-answers-after-loader'], also=['early-console-goes-black'], limit=70, stage='loader')
def _(b):
    """UEFI and grub, the kernel's messages go to a screen only (console=tty0 in place of the serial line)"""
    b.uefi()
    def edit(r):
        f = r / 'boot/grub/grub.cfg'
        f.write_text(f.read_text().replace('console=ttyS0', 'console=tty0'))
    b.disk(b.root(edit))


@ld('initrd-cut-short', 'boot-partition-full', also=['initramfs-corrupt'], end=['end Kernel panic'], limit=120, stage='root', general=['kernel-panics', 'root-mount-fails'])
def _(b):
    """UEFI and grub, the initramfs was cut at 8 MB, as a full /boot leaves it"""
    b.uefi()
    def edit(r):
        sh('truncate', '-s', '8M', r / f'boot/initrd.img-{kver()}')
    b.disk(b.root(edit))
