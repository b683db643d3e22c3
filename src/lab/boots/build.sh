#!/bin/bash
# Builds what the scenes boot: two small Debian trees and their disk images, in $LAB (default /tmp/lab-boots).
#   12: bookworm, initramfs-tools, grub (UEFI and BIOS)        13: trixie, dracut, systemd-boot
# Needs root, loop devices and apt-get. Parts: packages tree12 image12 tree13 image13 grub13 sysv modules store
set -euo pipefail
LAB=${LAB:-/tmp/lab-boots}
HERE=$(cd "$(dirname "$0")" && pwd)
# The mirror that this machine's apt uses already.
MIRROR=${MIRROR:-$(apt-get indextargets --format '$(REPO_URI)' | grep -v security | head -n 1)}
. "$HERE/names.sh"
mkdir -p "$LAB"; cd "$LAB"

packages() {
  export DEBIAN_FRONTEND=noninteractive
  apt-get install -y --no-install-recommends qemu-system-x86 qemu-utils ovmf seabios ipxe-qemu debootstrap \
    e2fsprogs xfsprogs btrfs-progs dosfstools mtools squashfs-tools syslinux syslinux-common shim-signed grub-efi-amd64-signed grub-common kmod cpio zstd lz4 gzip xz-utils gdisk fdisk gcc make
}

in_tree() { # in_tree DIR COMMAND...
  local d=$1; shift
  for m in dev proc sys; do mountpoint -q "$d/$m" || mount --bind /$m "$d/$m"; done
  local rc=0
  DEBIAN_FRONTEND=noninteractive LC_ALL=C PATH=/usr/sbin:/usr/bin:/sbin:/bin chroot "$d" "$@" || rc=$?
  for m in sys proc dev; do umount "$d/$m"; done
  return $rc
}

common_setup() { # common_setup DIR
  local d=$1
  printf '#!/bin/sh\nexit 101\n' > "$d/usr/sbin/policy-rc.d"; chmod 755 "$d/usr/sbin/policy-rc.d"
  echo lantern-bench > "$d/etc/hostname"
  printf '127.0.0.1 localhost\n127.0.1.1 lantern-bench\n' > "$d/etc/hosts"
  echo "UUID=$ROOT_UUID / ext4 errors=remount-ro 0 1" > "$d/etc/fstab"
  in_tree "$d" sh -c 'echo root:lantern | chpasswd'
  for u in apt-daily.timer apt-daily-upgrade.timer systemd-timesyncd.service e2scrub_reap.service apparmor.service; do
    ln -sf /dev/null "$d/etc/systemd/system/$u"
  done
  rm -rf "$d"/usr/share/{doc,man,locale,info}/* "$d"/var/cache/apt/archives/*.deb
}

asked_for() { # asked_for FROM TO: the same modules, and only those are loaded that the devices ask for, as an installation does it
  (rm -rf t3; mkdir t3; cd t3; zstd -dcq "../$1" | cpio -idm --quiet; : > conf/modules
   find . | cpio -o -H newc -R 0:0 --quiet | zstd -6 -q > "../$2"); rm -rf t3
}

tree12() {
  [ -d root12 ] || { debootstrap --variant=minbase --include=systemd,systemd-sysv,udev,dbus,kmod,procps,iproute2,initramfs-tools,linux-image-amd64,e2fsprogs,zstd,login,passwd,util-linux,cryptsetup,cryptsetup-initramfs,lvm2,thin-provisioning-tools,mdadm,btrfs-progs,xfsprogs,dosfstools,nfs-common,busybox,squashfs-tools,apparmor,libpam-systemd bookworm root12.part "$MIRROR"; mv root12.part root12; }
  common_setup root12
  in_tree root12 apt-get install -y --no-install-recommends grub-efi-amd64-bin grub-pc-bin grub2-common
  local v; v=$(basename root12/boot/vmlinuz-* | sed 's/vmlinuz-//'); echo "$v" > kver12
  cp root12/boot/vmlinuz-"$v" kernel12
  in_tree root12 mkinitramfs -o /boot/initrd.most "$v"; mv root12/boot/initrd.most initrd12.most
  # a smaller one: the drivers of the machines that the scenes use
  sed -i 's/^MODULES=.*/MODULES=list/' root12/etc/initramfs-tools/initramfs.conf
  printf '%s\n' virtio_pci virtio_blk virtio_scsi virtio_net e1000 e1000e ahci ata_piix sd_mod sr_mod nvme usb_storage uas xhci_pci ehci_pci uhci_hcd usbhid sdhci_pci mmc_block ext4 xfs btrfs vfat \
    nls_ascii dm_mod dm_crypt dm_mirror dm_snapshot raid1 raid456 nfs overlay squashfs loop > root12/etc/initramfs-tools/modules
  echo RESUME=none > root12/etc/initramfs-tools/conf.d/resume
  in_tree root12 update-initramfs -u -k "$v"
  cp root12/boot/initrd.img-"$v" initrd12
  # faster: no measuring of checksum routines for btrfs at every boot, and only a few services
  (rm -rf t3; mkdir t3; cd t3; zstd -dcq ../initrd12 | cpio -idm --quiet; rm scripts/local-premount/btrfs
   sed -i /btrfs/d scripts/local-premount/ORDER; find . | cpio -o -H newc -R 0:0 --quiet | zstd -6 -q > ../initrd12)
  cp initrd12 root12/boot/initrd.img-"$v"
  rm -rf t3; asked_for initrd12 initrd12.plain
  # one that unlocks a root file system
  echo "lantern_crypt UUID=$LUKS_UUID none luks,discard" > root12/etc/crypttab
  echo 'CRYPTSETUP=y' > root12/etc/cryptsetup-initramfs/conf-hook
  sed 's/^lantern_crypt.*/&,initramfs/' -i root12/etc/crypttab
  in_tree root12 mkinitramfs -o /boot/initrd.crypt "$v"; mv root12/boot/initrd.crypt initrd12.crypt; asked_for initrd12.crypt initrd12.crypt
  rm root12/etc/crypttab; : > root12/etc/cryptsetup-initramfs/conf-hook
  # one for live media
  rm -rf root12l; cp -a root12 root12l
  in_tree root12l apt-get install -y --no-install-recommends live-boot live-boot-initramfs-tools
  in_tree root12l mkinitramfs -o /boot/initrd.live "$v"; mv root12l/boot/initrd.live initrd12.live; rm -rf root12l; asked_for initrd12.live initrd12.live
}

tree13() {
  [ -d root13 ] || { debootstrap --variant=minbase --include=systemd,systemd-sysv,udev,dbus,kmod,procps,iproute2,e2fsprogs,zstd,login,passwd,util-linux,libpam-systemd,btrfs-progs,cryptsetup,cryptsetup-bin,lvm2,systemd-cryptsetup,squashfs-tools trixie root13.part "$MIRROR"; mv root13.part root13; }
  common_setup root13
  in_tree root13 apt-get install -y --no-install-recommends dracut linux-image-amd64 systemd-boot-efi
  local v; v=$(basename root13/boot/vmlinuz-* | sed 's/vmlinuz-//'); echo "$v" > kver13
  cp root13/boot/vmlinuz-"$v" kernel13
  local drv='virtio_pci virtio_blk virtio_scsi virtio_net ahci sd_mod nvme usb_storage xhci_pci usbhid ext4 btrfs xfs dm_crypt'
  in_tree root13 dracut --force --no-hostonly --no-hostonly-cmdline --drivers "$drv" --omit "kernel-modules plymouth" /boot/i "$v"
  mv root13/boot/i initrd13
  in_tree root13 dracut --force --no-hostonly --no-hostonly-cmdline --drivers "$drv" --omit "kernel-modules plymouth systemd systemd-initrd dracut-systemd crypt" /boot/i "$v" && mv root13/boot/i initrd13.nosystemd
  cp initrd13 root13/boot/initrd.img-"$v"
}

grub13() { # the loader modules of the newer release, for a scene with mixed versions
  rm -rf grub13; mkdir grub13
  in_tree root13 sh -c 'cd /tmp && apt-get download grub-efi-amd64-bin'
  dpkg-deb -x root13/tmp/grub-efi-amd64-bin*.deb grub13; rm root13/tmp/*.deb
}

sysv() { # the first tree again, with the old init
  rm -rf root12v; cp -a root12 root12v
  in_tree root12v apt-get install -y --no-install-recommends --allow-remove-essential sysvinit-core sysv-rc initscripts || true
  rm -f root12v/etc/inittab.orig
  echo 'T0:23:respawn:/sbin/getty -L ttyS0 115200 vt100' >> root12v/etc/inittab
  echo '/dev/vda / ext4 errors=remount-ro 0 1' > root12v/etc/fstab
  rm -f base12v.img; truncate -s 1400M base12v.img; mke2fs -q -t ext4 -d root12v base12v.img
}

esp() { # esp FILE: an empty ESP of 64 MiB
  rm -f "$1"; truncate -s 64M "$1"; mkfs.vfat -F 32 -i "${ESP_ID/-/}" -n LANTERNESP "$1" >/dev/null
}

disk() { # disk FILE TREE: GPT with ESP, BIOS boot and root
  local f=$1 tree=$2
  rm -f "$f" "$f.root"; truncate -s 1900M "$f.root"
  mke2fs -q -t ext4 -U "$ROOT_UUID" -L lantern-root -d "$tree" "$f.root"
  truncate -s 2000M "$f"
  sgdisk -U "$DISK_GUID" -n 1:2048:+64M -t 1:ef00 -u "1:$ESP_PART" -n 2:0:+1M -t 2:ef02 -n 3:135168:+1900M -t 3:8304 -u "3:$ROOT_PART" "$f" >/dev/null
  dd if="$f.root" of="$f" bs=1M seek=66 conv=notrunc,sparse status=none; rm "$f.root"
}

image12() {
  disk base12.img root12
  esp esp.img
  # The loaders are put in place by hand as grub-install does it, because loop devices here have no partitions.
  cat > early.cfg <<-G
	search.fs_uuid $ROOT_UUID root
	set prefix=(\$root)'/boot/grub'
	G
  grub-mkimage -O x86_64-efi -d root12/usr/lib/grub/x86_64-efi -c early.cfg -p /boot/grub -o bootx64.efi \
    part_gpt part_msdos ext2 search_fs_uuid fat
  mmd -i esp.img ::/EFI ::/EFI/BOOT; mcopy -i esp.img bootx64.efi ::/EFI/BOOT/BOOTX64.EFI
  dd if=esp.img of=base12.img bs=1M seek=1 conv=notrunc,sparse status=none
  grub-mkimage -O i386-pc -d root12/usr/lib/grub/i386-pc -p '(,gpt3)/boot/grub' -o core.img biosdisk part_gpt ext2
  python3 - <<-P
	core = bytearray(open('core.img', 'rb').read())
	at = 65 * 2048                                         # first sector of the BIOS boot partition
	core[0x1f4:0x1fc] = (at + 1).to_bytes(8, 'little')     # where the rest of the image is
	boot = bytearray(open('root12/usr/lib/grub/i386-pc/boot.img', 'rb').read())
	boot[0x5c:0x64] = at.to_bytes(8, 'little')
	boot[0x66:0x68] = b'\\x90\\x90'                        # use the drive number that the firmware gives
	with open('base12.img', 'r+b') as f:
	    f.write(boot[:440])
	    f.seek(at * 512)
	    f.write(core)
	P
  mkdir -p mnt; mount -o loop,offset=$((66 * 1048576)) base12.img mnt
  mkdir -p mnt/boot/grub/fonts; cp -r root12/usr/lib/grub/x86_64-efi root12/usr/lib/grub/i386-pc mnt/boot/grub/
  cp mnt/usr/share/grub/unicode.pf2 mnt/boot/grub/fonts/
  in_tree mnt grub-editenv /boot/grub/grubenv create
  printf '%s\n' GRUB_DEFAULT=0 GRUB_TIMEOUT=1 GRUB_DISTRIBUTOR=Debian GRUB_CMDLINE_LINUX=console=ttyS0 \
    'GRUB_CMDLINE_LINUX_DEFAULT=""' GRUB_TERMINAL=console GRUB_DISABLE_OS_PROBER=true > mnt/etc/default/grub
  # the menu writer skips loop devices: tell it the name that the partition has in the machine
  printf '#!/bin/sh\necho "/dev/loop0: (/dev/vda3)"\n' > mnt/tmp/losetup; chmod 755 mnt/tmp/losetup
  in_tree mnt env PATH=/tmp:/usr/sbin:/usr/bin:/sbin:/bin grub-mkconfig -o /boot/grub/grub.cfg
  rm mnt/tmp/losetup
  sed -i '/loopback loop0/d; s/set root=(loop0)/insmod part_gpt/' mnt/boot/grub/grub.cfg
  sed -i "s#root=/dev/vda3#root=UUID=$ROOT_UUID#" mnt/boot/grub/grub.cfg
  umount mnt
}

image13() {
  disk base13.img root13
  esp esp.img
  local v; v=$(cat kver13)
  mmd -i esp.img ::/EFI ::/EFI/BOOT ::/EFI/systemd ::/loader ::/loader/entries ::/debian
  mcopy -i esp.img root13/usr/lib/systemd/boot/efi/systemd-bootx64.efi ::/EFI/BOOT/BOOTX64.EFI
  mcopy -i esp.img root13/usr/lib/systemd/boot/efi/systemd-bootx64.efi ::/EFI/systemd/systemd-bootx64.efi
  printf 'default debian.conf\ntimeout 1\n' > loader.conf; mcopy -i esp.img loader.conf ::/loader/loader.conf
  printf 'title Debian GNU/Linux 13 (trixie)\nversion %s\nlinux /debian/linux\ninitrd /debian/initrd.img\noptions root=UUID=%s ro console=ttyS0\n' "$v" "$ROOT_UUID" > debian.conf
  mcopy -i esp.img debian.conf ::/loader/entries/debian.conf
  mcopy -i esp.img kernel13 ::/debian/linux; mcopy -i esp.img initrd13 ::/debian/initrd.img
  dd if=esp.img of=base13.img bs=1M seek=1 conv=notrunc,sparse status=none
}

modules() { # small kernel modules that fail on purpose
  local v; v=$(cat kver12)
  apt-get install -y --no-install-recommends "linux-headers-$v" gcc make
  rm -rf mod; cp -r "$HERE/modules" mod
  make -C "/lib/modules/$v/build" M="$PWD/mod" modules
}

store() { # disks with LVM, RAID and encryption; made in a guest, since the host may lack the drivers
  "$HERE/lab" store
}

for p in "${@:-packages tree12 image12 tree13 image13 grub13 sysv modules store}"; do for q in $p; do echo "== $q"; "$q"; done; done
