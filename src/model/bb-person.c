/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bb-person.h"

BB_DEFINE_CHOICES (bb_role, "role", BB_ROLE_CHOICES);
BB_DEFINE_CHOICES (bb_deed, "deed", BB_DEED_CHOICES);

BB_DEFINE_TABLE (BbPerson, bb_person, "person", N_("Person"), BB_PERSON_FIELDS, NULL)
BB_DEFINE_TABLE (BbEvent, bb_event, "event", N_("Event"), BB_EVENT_FIELDS, NULL)
