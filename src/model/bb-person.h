/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib/gi18n-lib.h>

#include "bb-field.h"

G_BEGIN_DECLS

#define BB_ROLE_CHOICES(C) \
  C (BB_ROLE_OPERATOR, "operator", N_("Operator")) \
  C (BB_ROLE_LEAD, "lead", N_("Process lead")) \
  C (BB_ROLE_TRAINER, "trainer", N_("Trainer")) \
  C (BB_ROLE_OWNER, "owner", N_("Owner"))

BB_DECLARE_CHOICES (BbRole, bb_role, BB_ROLE_CHOICES);

#define BB_PERSON_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("Initials"), .help = N_("How this person signs."), .limits = BB_BETWEEN (1, 12), \
     .required = TRUE) \
  F (T, TEXT, name, N_("Name"), .help = N_("The person's name."), .limits = BB_BETWEEN (1, 120), .required = TRUE) \
  F (T, CHOICE, role, N_("Role"), .help = N_("What the person does in the shop."), .choices = &bb_role_choices, \
     .required = TRUE) \
  F (T, DATE, withdrawn_at, N_("Withdrawn"), .help = N_("When the person left the shop."), \
     .derived = TRUE, .stepwise = TRUE)

BB_DECLARE_TABLE (BbPerson, bb_person, BB_PERSON_FIELDS);

#define BB_DEED_CHOICES(C) \
  C (BB_DEED_ADDED, "added", N_("Added")) \
  C (BB_DEED_CHANGED, "changed", N_("Changed")) \
  C (BB_DEED_WITHDRAWN, "withdrawn", N_("Withdrawn")) \
  C (BB_DEED_RESTORED, "restored", N_("Restored")) \
  C (BB_DEED_STATE, "state", N_("State changed")) \
  C (BB_DEED_IMPORTED, "imported", N_("Imported"))

BB_DECLARE_CHOICES (BbDeed, bb_deed, BB_DEED_CHOICES);

#define BB_EVENT_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, DATE, at, N_("When"), .help = N_("When it happened, in universal time."), .required = TRUE) \
  F (T, REFERENCE, person, N_("Who"), .help = N_("Who did it."), .target = &bb_person_table) \
  F (T, CHOICE, deed, N_("What"), .help = N_("What was done."), .choices = &bb_deed_choices, .required = TRUE) \
  F (T, TEXT, subject, N_("Kind of record"), .help = N_("The table of the record."), .required = TRUE) \
  F (T, INTEGER, subject_id, N_("Record"), .help = N_("The key of the record."), .required = TRUE) \
  F (T, TEXT, detail, N_("Detail"), .help = N_("The record as it was written."), \
     .limits = BB_BETWEEN (0, 100000), .multiline = TRUE)

BB_DECLARE_TABLE (BbEvent, bb_event, BB_EVENT_FIELDS);

G_END_DECLS
