// SPDX-License-Identifier: GPL-2.0
/* A module that fails in the way that its parameter names; only for captured boots. */
#include <linux/delay.h>
#include <linux/kernel.h>
#include <linux/module.h>
#include <linux/string.h>

static char *how = "oops";
module_param(how, charp, 0);

static noinline void smash(volatile char *end)
{
	char room[16];
	int i;

	for (i = 0; i < 64; i++)
		((volatile char *)room)[i] = 'L';
	OPTIMIZER_HIDE_VAR(end);
	memcpy((char *)end, room, 1);
}

static int __init lantern_card_init(void)
{
	char c;

	pr_info("lantern_card: looking for cards\n");
	if (!strcmp(how, "oops"))
		*(volatile int *)8 = 1;
	else if (!strcmp(how, "bug"))
		BUG();
	else if (!strcmp(how, "smash"))
		smash(&c);
	else if (!strcmp(how, "spin")) {
		preempt_disable();
		for (;;)
			barrier(); /* not cpu_relax(): an emulator gives up its turn at each one */
	} else if (!strcmp(how, "sleep"))
		for (;;)
			msleep(1000);
	else if (!strcmp(how, "guard"))
		panic("lantern_guard: lid of enclosure 2 is open, machine stopped by the bench controller");
	return 0;
}
module_init(lantern_card_init);
MODULE_LICENSE("GPL");
MODULE_DESCRIPTION("fails on purpose");
