# Invented identifiers of the lab's disks; also read by bench.py
ROOT_UUID=5d1c7a90-3b1e-4c55-9e0a-7f2a60c41d08
ROOT_PART=0b7f5a52-6a0e-4d0c-8f0a-5b8e2a91c3d4
ESP_PART=c1a60f9e-0d6b-4c1e-9a57-2d4b8e6f7a10
DISK_GUID=8e2d4c6a-1b3f-4a5d-9c7e-0f1a2b3c4d5e
ESP_ID=4C41-4E54
LUKS_UUID=a3f19c02-77d4-4b1e-8c55-19e0d2b6f481
