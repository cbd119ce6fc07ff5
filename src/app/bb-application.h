/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

/**
 * BbApplication:
 *
 * The program: opens one window per book.
 */
#define BB_TYPE_APPLICATION (bb_application_get_type ())
G_DECLARE_FINAL_TYPE (BbApplication, bb_application, BB, APPLICATION, AdwApplication)

BbApplication *bb_application_new (void);

G_END_DECLS
