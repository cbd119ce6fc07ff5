/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-wash.h"

G_BEGIN_DECLS

/* Common practice, no source: a scan of a sheet at 300 pixels per inch with room to spare. */
#define BB_PICTURE_BYTES (32 * 1024 * 1024)

/* A picture in the book. Its bytes are stored once, whatever refers to them, and are no part of the record. */
#define BB_PICTURE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, code, N_("SHA-256"), .help = N_("The SHA-256 of its bytes, by which it is known everywhere."), \
     .limits = BB_BETWEEN (64, 64), .derived = TRUE, .required = TRUE) \
  F (T, TEXT, name, N_("File name"), .help = N_("What the file was called."), .limits = BB_BETWEEN (1, 255), \
     .required = TRUE) \
  F (T, INTEGER, n_bytes, N_("Size"), .help = N_("How many bytes it has."), \
     .limits = BB_BETWEEN (1, BB_PICTURE_BYTES), .derived = TRUE, .required = TRUE) \
  F (T, INTEGER, width_px, N_("Columns"), .help = N_("How many columns of pixels it has."), \
     .limits = BB_BETWEEN (1, 200000), .required = TRUE) \
  F (T, INTEGER, height_px, N_("Rows"), .help = N_("How many rows of pixels it has."), \
     .limits = BB_BETWEEN (1, 1000000000), .required = TRUE) \
  F (T, DATE, added_at, N_("Added"), .help = N_("When it came into the book."), .required = TRUE)

BB_DECLARE_TABLE (BbPicture, bb_picture, BB_PICTURE_FIELDS);

#define BB_SUBJECT_CHOICES(C) \
  C (BB_SUBJECT_PRINT, "print", N_("The print")) \
  C (BB_SUBJECT_CLOTH, "cloth", N_("The white fabric beside it"))

BB_DECLARE_CHOICES (BbSubject, bb_subject, BB_SUBJECT_CHOICES);

/* A specimen as it was scanned once: before the first wash, at 0 cycles, or after some. */
#define BB_SCAN_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, REFERENCE, wash_test, N_("Specimen"), .help = N_("The specimen that was scanned."), \
     .target = &bb_wash_test_table, .owner = TRUE, .required = TRUE) \
  F (T, INTEGER, cycles, N_("Cycles"), .help = N_("How many washes it has had."), .limits = BB_BETWEEN (0, 500), \
     .required = TRUE) \
  F (T, CHOICE, subject, N_("Scan of"), \
     .help = N_("Change is read from the print, staining from the fabric beside it."), \
     .choices = &bb_subject_choices, .fallback = BB_DEFAULT (BB_SUBJECT_PRINT), .required = TRUE) \
  F (T, REFERENCE, picture, N_("Picture"), .help = N_("The scan."), .target = &bb_picture_table, .required = TRUE) \
  F (T, INTEGER, x_px, N_("From the left"), .help = N_("Columns to the left of what was measured."), \
     .limits = BB_BETWEEN (0, 199999), .required = TRUE) \
  F (T, INTEGER, y_px, N_("From the top"), .help = N_("Rows above what was measured."), \
     .limits = BB_BETWEEN (0, 999999999), .required = TRUE) \
  F (T, INTEGER, width_px, N_("Columns"), .help = N_("How many columns were measured."), \
     .limits = BB_BETWEEN (1, 200000), .required = TRUE) \
  F (T, INTEGER, height_px, N_("Rows"), .help = N_("How many rows were measured."), \
     .limits = BB_BETWEEN (1, 1000000000), .required = TRUE) \
  F (T, NUMBER, l, N_("L*"), .help = N_("Mean lightness, CIELAB of D50."), .limits = BB_BETWEEN (0, 150), \
     .required = TRUE) \
  F (T, NUMBER, a, N_("a*"), .help = N_("Mean a*."), .limits = BB_BETWEEN (-500, 500), .required = TRUE) \
  F (T, NUMBER, b, N_("b*"), .help = N_("Mean b*."), .limits = BB_BETWEEN (-500, 500), .required = TRUE) \
  F (T, NUMBER, l_sd, N_("Spread of L*"), .help = N_("Standard deviation of the pixels' L*."), \
     .limits = BB_BETWEEN (0, 500)) \
  F (T, NUMBER, a_sd, N_("Spread of a*"), .help = N_("Standard deviation of the pixels' a*."), \
     .limits = BB_BETWEEN (0, 500)) \
  F (T, NUMBER, b_sd, N_("Spread of b*"), .help = N_("Standard deviation of the pixels' b*."), \
     .limits = BB_BETWEEN (0, 500)) \
  F (T, INTEGER, patch_x_px, N_("Patch from the left"), \
     .help = N_("Columns to the left of the patch that shows drift."), \
     .limits = BB_BETWEEN (0, 199999)) \
  F (T, INTEGER, patch_y_px, N_("Patch from the top"), .help = N_("Rows above the patch."), \
     .limits = BB_BETWEEN (0, 999999999)) \
  F (T, INTEGER, patch_width_px, N_("Columns of the patch"), .help = N_("How many columns the patch has."), \
     .limits = BB_BETWEEN (1, 200000)) \
  F (T, INTEGER, patch_height_px, N_("Rows of the patch"), .help = N_("How many rows the patch has."), \
     .limits = BB_BETWEEN (1, 1000000000)) \
  F (T, NUMBER, patch_l, N_("L* of the patch"), .help = N_("Mean lightness of the patch."), \
     .limits = BB_BETWEEN (0, 150)) \
  F (T, NUMBER, patch_a, N_("a* of the patch"), .help = N_("Mean a* of the patch."), .limits = BB_BETWEEN (-500, 500)) \
  F (T, NUMBER, patch_b, N_("b* of the patch"), .help = N_("Mean b* of the patch."), .limits = BB_BETWEEN (-500, 500)) \
  F (T, DATE, scanned_at, N_("Scanned"), .help = N_("When it was scanned."), .required = TRUE) \
  F (T, REFERENCE, person, N_("By"), .help = N_("Who scanned it."), .target = &bb_person_table)

BB_DECLARE_TABLE (BbScan, bb_scan, BB_SCAN_FIELDS);

gboolean       bb_scan_has_patch             (const BbScan *self);
gboolean       bb_scan_is_in_place_of        (const BbScan *self,
                                              const BbScan *other);
const BbField *bb_subject_get_measured_field (BbSubject     self);

G_END_DECLS
