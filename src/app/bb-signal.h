/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

/* Handlers are matched by an object pointer, which ISO C does not make of a function's by itself. */
#define BB_HANDLER(function) GSIZE_TO_POINTER ((gsize) (function))
