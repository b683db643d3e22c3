"""Disks with LVM, RAID and encryption, made inside a guest because the host may lack the drivers."""
import types
from bench import LAB, ROOT, TTY, NAMES, Bench, sh_text

SCRIPT = f'''#!/bin/bash
export PATH=/usr/sbin:/usr/bin:/sbin:/bin
mount -t proc proc /proc; mount -t sysfs sys /sys; mount -t devtmpfs dev /dev 2>/dev/null; mount -t tmpfs run /run; mount -o remount,rw /
exec > /dev/ttyS0 2>&1
set -x
modprobe -a dm_mod dm_crypt raid456 dm_thin_pool virtio_blk
/lib/systemd/systemd-udevd --daemon; udevadm trigger; udevadm settle -t 30
printf lantern | cryptsetup luksFormat -q --type luks2 --pbkdf pbkdf2 --pbkdf-force-iterations 1000 --uuid {NAMES["LUKS_UUID"]} /dev/vdb -
printf lantern | cryptsetup open /dev/vdb c -; mkfs.ext4 -q /dev/mapper/c; cryptsetup close c
vgcreate lantern /dev/vdc /dev/vdd
lvcreate -y -Wy -l 100%FREE -n root lantern; mkfs.ext4 -q /dev/lantern/root; vgchange -an lantern
vgcreate bench /dev/vde
lvcreate -y -L 120M -T bench/pool; lvcreate -y -V 100M -T bench/pool -n root; mkfs.ext4 -q /dev/bench/root; sync; vgchange -an bench
at=$(lvs --noheadings -a -o seg_pe_ranges bench/pool_tmeta | sed 's/.*://; s/-.*//')
dd if=/dev/urandom of=/dev/vde bs=1M seek=$((1 + at * 4)) count=2 conv=notrunc; sync
mdadm --create /dev/md0 --run --assume-clean --level=5 -n 3 --metadata=1.2 --uuid=1a2b3c4d:5e6f7081:92a3b4c5:d6e7f809 /dev/vdf /dev/vdg /dev/vdh
mkfs.ext4 -q /dev/md0; sync; mdadm --stop /dev/md0
printf lantern | cryptsetup luksFormat -q --type luks2 --pbkdf pbkdf2 --pbkdf-force-iterations 1000 --uuid {NAMES["LUKS_UUID"]} /dev/vdi -
printf lantern | cryptsetup open /dev/vdi full -; vgcreate shelf /dev/mapper/full
lvcreate -y -L 64M -n swap shelf; mkswap /dev/shelf/swap; lvcreate -y -l 100%FREE -n root shelf; mkfs.ext4 -q /dev/shelf/root
mount /dev/shelf/root /mnt; cp -ax /. /mnt; rm /mnt/lab-store
echo '/dev/mapper/shelf-root / ext4 errors=remount-ro 0 1' > /mnt/etc/fstab; echo '/dev/mapper/shelf-swap none swap sw 0 0' >> /mnt/etc/fstab
echo 'lantern_crypt UUID={NAMES["LUKS_UUID"]} none luks,discard' > /mnt/etc/crypttab
umount /mnt; vgchange -an shelf; cryptsetup close full
sync; echo STORE-READY; sleep 2; echo o > /proc/sysrq-trigger; sleep 60
'''


def build():
    (LAB / 'store').mkdir(exist_ok=True)
    sizes = dict(luks=80, pv1=64, pv2=64, thin=256, r5a=48, r5b=48, r5c=48, full=1600)  # full: a whole system, LVM inside encryption
    for n, m in sizes.items():
        sh_text(f"rm -f {LAB}/store/{n}.img; truncate -s {m}M {LAB}/store/{n}.img")
    s = types.SimpleNamespace(name='store', end=[b'STORE-READY\r'], limit=900, quiet=400, linger=6)
    b = Bench(s)

    def edit(r):
        f = r / 'lab-store'
        f.write_text(SCRIPT)
        f.chmod(0o755)
    b.memory = 768
    b.disk(b.root(edit))
    for n in sizes:
        b.disk(f'store/{n}.img', keep=True)
    b.direct(f'root=/dev/vda3 rw init=/lab-store {TTY}')
    data, why, took = b.run()
    (LAB / 'store/made.log').write_bytes(data)
    print(f'store: {why}, {took:.0f} s; see {LAB}/store/made.log')
