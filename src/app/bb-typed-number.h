/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-field.h"
#include "bb-text.h"

G_BEGIN_DECLS

/**
 * BbTypedNumber:
 *
 * A number, or two that are written as `a : b`, as a person types it and a record holds it. A text that nobody touched
 * stands for the exact value, of which it shows a few digits; and what was typed in some units keeps its value when
 * others are chosen.
 */
typedef struct _BbTypedNumber BbTypedNumber;

BbTypedNumber *bb_typed_number_new     (const BbField        *field);
void           bb_typed_number_free    (BbTypedNumber        *self);
const char    *bb_typed_number_load    (BbTypedNumber        *self,
                                        double                number,
                                        double                second,
                                        const BbUnitContext  *units);
gboolean       bb_typed_number_read    (BbTypedNumber        *self,
                                        const char           *text,
                                        const BbUnitContext  *units,
                                        double               *number,
                                        double               *second,
                                        char                **message);
const char    *bb_typed_number_refresh (BbTypedNumber        *self,
                                        const char           *text,
                                        const BbUnitContext  *units);
const char    *bb_typed_number_resume  (BbTypedNumber        *self,
                                        const char           *text,
                                        BbUnitSystem          system,
                                        const BbUnitContext  *units);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BbTypedNumber, bb_typed_number_free)

G_END_DECLS
