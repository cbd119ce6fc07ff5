/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-scan.h"

G_BEGIN_DECLS

char *bb_scan_dup_colours (const BbScan *scan);

G_END_DECLS
