"""Parts of other captures: the last 25 lines, or a few lines without time stamps."""
from bench import excerpt, last25

for source in ('initramfs-wrong-uuid', 'kernel-without-initramfs', 'initramfs-without-nvme', 'fstab-type-wrong',
               'init-library-gone', 'live-medium-gone', 'module-oops-panics', 'crypt-source-missing',
               'btrfs-subvolume-gone', 'data-disk-needs-fsck', 'lvm-one-disk-missing', 'kernel-machine-check-cpu',
               'dracut-wrong-uuid', 'unit-never-ends', 'nvme-superblock-unreadable', 'init-file-gone',
               'kernel-timer-missing', 'ahci-superblock-unreadable', 'ext4-journal-overwritten', 'root-is-data-partition',
               'initramfs-no-root-argument', 'initramfs-disk-renamed',
               'fstab-disk-gone', 'lvm-group-not-there', 'healthy-encrypted-lvm',
               'memory-eaten-by-service', 'nfs-root-unreachable', 'root-fsck-by-hand',
               'dracut-crypt-passphrase-refused', 'live-overlay-missing', 'bus-daemon-gone', 'nvme-stops-answering'):
    last25(f'last-{source}', source)
last25('last-usb-stick-pulled', 'usb-stick-pulled', also=['disk-dying'])
last25('last-raid-members-disagree', 'raid-members-disagree', also=['raid-array-degraded-not-started', 'raid-array-not-assembled'])

excerpt('part-ext4-feature', 'ext4-feature-of-the-future', 'EXT4-fs.*unsupported', 8)
excerpt('part-init-not-runnable', 'init-of-other-machine', 'Begin: Running /scripts/init-bottom', 12)
excerpt('part-initramfs-damaged', 'kernel-initramfs-damaged', 'Initramfs unpacking failed', 12)
excerpt('part-crypt-refused', 'crypt-passphrase-refused', 'Please unlock disk', 8)
excerpt('part-emergency-root-locked', 'emergency-root-locked', 'Timed out waiting for device', 9)
excerpt('part-xfs-superblock', 'xfs-superblock-overwritten', 'XFS .*(Invalid|SB)', 9)
excerpt('part-selinux', 'selinux-without-policy', 'SELinux policy', 6)
excerpt('part-no-initrd', 'grub-initrd-gone', 'List of all partitions|Please append', 9)
excerpt('part-init-library', 'init-library-gone', 'error while loading shared libraries', 7)
excerpt('part-nvme-medium-error', 'nvme-superblock-unreadable', 'I/O Cmd', 10)
excerpt('part-timer', 'kernel-timer-missing', 'MP-BIOS bug', 8)
excerpt('part-init-gone', 'init-file-gone', 'init-bottom', 8)
excerpt('part-xfs-log', 'xfs-log-damaged', 'XFS .*Mounting', 6)
excerpt('part-out-of-memory', 'memory-eaten-by-service', 'invoked oom-killer', 12)
excerpt('part-units-in-a-circle', 'units-in-a-circle', 'ordering cycle', 4)
excerpt('part-crypt-header', 'crypt-header-overwritten', 'not a valid LUKS|cryptsetup:', 4)
excerpt('part-soft-lockup', 'module-spins', 'soft lockup', 14)
