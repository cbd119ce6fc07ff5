/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-wash.h"

G_BEGIN_DECLS

/* What holds for the whole shop: one record at most. Where there is none yet, the defaults below hold. */
#define BB_SHOP_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, TEXT, name, N_("Name"), .help = N_("The shop's name, as it stands at the head of reports."), \
     .limits = BB_BETWEEN (1, 120), .required = TRUE) \
  F (T, TEXT, address, N_("Address"), .help = N_("What stands below the name on reports."), \
     .limits = BB_BETWEEN (0, 400), .multiline = TRUE) \
  F (T, INTEGER, proof_specimens, N_("Specimens for a proof"), \
     .help = N_("How many specimens have to pass at their plan's last cycle, and none fail, before a revision can be " \
                "signed as proven."), \
     .limits = BB_BETWEEN (1, 1000), .fallback = BB_DEFAULT (3), .required = TRUE, \
     .group = N_("Proof")) \
  F (T, NUMBER, proof_confidence_fraction, N_("Confidence"), \
     .help = N_("How sure the bound of a pass rate has to be."), .quantity = BB_QUANTITY_FRACTION, \
     .limits = BB_INSIDE (0, 1), .fallback = BB_DEFAULT (0.9), .required = TRUE, \
     .group = N_("Proof")) \
  F (T, NUMBER, overspray_fraction, N_("Overspray"), \
     .help = N_("Share of what leaves the nozzles that does not land on the garment."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_FROM_BELOW (0, 1), .fallback = BB_DEFAULT (0), \
     .group = N_("Losses and reserve")) \
  F (T, NUMBER, line_loss_g, N_("Line loss"), \
     .help = N_("What priming and purging the sprayer takes, once a mix."), .quantity = BB_QUANTITY_MASS, \
     .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), \
     .group = N_("Losses and reserve")) \
  F (T, NUMBER, reserve_fraction, N_("Reserve"), \
     .help = N_("How much more pretreat to make up, as a share of all the rest."), \
     .quantity = BB_QUANTITY_FRACTION, .limits = BB_BETWEEN (0, 1), .fallback = BB_DEFAULT (0.05), \
     .group = N_("Losses and reserve")) \
  F (T, NUMBER, round_up_to_g, N_("Round up to"), .help = N_("The step that a mix is rounded up to; 0 for none."), \
     .quantity = BB_QUANTITY_MASS, .limits = BB_BETWEEN (0, 1e6), .fallback = BB_DEFAULT (0), \
     .group = N_("Losses and reserve")) \
  F (T, NUMBER, labour_price_per_h, N_("Labour per hour"), .help = N_("What an hour at the machines costs."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), \
     .group = N_("Costs")) \
  F (T, NUMBER, energy_price_per_kwh, N_("Energy per kWh"), .help = N_("Price of one kilowatt hour."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), \
     .group = N_("Costs")) \
  F (T, NUMBER, white_price_per_kg, N_("White ink per kilogram"), .help = N_("Price of the white ink."), \
     .quantity = BB_QUANTITY_MONEY, .limits = BB_BETWEEN (0, 1e6), \
     .group = N_("Costs")) \
  F (T, NUMBER, colour_price_per_kg, N_("Colour ink per kilogram"), \
     .help = N_("Price of the colour inks, on average."), .quantity = BB_QUANTITY_MONEY, \
     .limits = BB_BETWEEN (0, 1e6), \
     .group = N_("Costs")) \
  F (T, NUMBER, colour_g_per_m2, N_("Colour ink per area"), \
     .help = N_("Mass of all colour inks together on a coloured area, from what a month took."), \
     .quantity = BB_QUANTITY_MASS_PER_AREA, .limits = BB_BETWEEN (0, 600), \
     .group = N_("Costs"))

BB_DECLARE_TABLE (BbShop, bb_shop, BB_SHOP_FIELDS);

/* A proven revision rests on one: that of its standing's moment and person. It is written once and never changed. */
#define BB_SIGNATURE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, REFERENCE, revision, N_("Revision"), .help = N_("The revision that is signed as proven."), \
     .target = &bb_revision_table, .owner = TRUE, .required = TRUE) \
  F (T, DATE, signed_at, N_("Signed"), .help = N_("When."), .required = TRUE) \
  F (T, REFERENCE, person, N_("By"), .help = N_("Who signs."), .target = &bb_person_table, .required = TRUE) \
  F (T, FLAG, overruled, N_("Overruled"), \
     .help = N_("Whether a lead signs although the shop's rule is not met."), .fallback = BB_DEFAULT (0), \
     .required = TRUE) \
  F (T, TEXT, reason, N_("Reason"), .help = N_("On what grounds; to overrule the shop's rule needs one."), \
     .limits = BB_BETWEEN (0, 400)) \
  F (T, INTEGER, passed, N_("Passed"), .help = N_("Specimens that had passed then."), \
     .limits = BB_BETWEEN (0, 1000000), .required = TRUE) \
  F (T, INTEGER, failed, N_("Failed"), .help = N_("Specimens that had failed then."), \
     .limits = BB_BETWEEN (0, 1000000), .required = TRUE) \
  F (T, INTEGER, needed, N_("Needed"), .help = N_("Specimens that the shop's rule asked for then."), \
     .limits = BB_BETWEEN (1, 1000), .required = TRUE)

BB_DECLARE_TABLE (BbSignature, bb_signature, BB_SIGNATURE_FIELDS);

#define BB_NEWS_CHOICES(C) \
  C (BB_NEWS_FAILED, "failed", N_("A specimen failed")) \
  C (BB_NEWS_EVIDENCE_GONE, "evidence-gone", N_("Specimens that the proof rested on are gone")) \
  C (BB_NEWS_BROUGHT_IN, "brought-in", N_("Brought in without the specimens that a proof needs"))

BB_DECLARE_CHOICES (BbNews, bb_news, BB_NEWS_CHOICES);

/* News that a person has to see: a revision that was proven is so no longer. It is of one book, as its events are. */
#define BB_NOTICE_FIELDS(F, T) \
  F (T, INTEGER, id, N_("Key"), .help = N_("The record's key in this book."), .derived = TRUE, .unsealed = TRUE) \
  F (T, DATE, at, N_("When"), .help = N_("When it happened."), .required = TRUE) \
  F (T, CHOICE, news, N_("News"), .help = N_("What took the proof away."), .choices = &bb_news_choices, \
     .required = TRUE) \
  F (T, REFERENCE, revision, N_("Revision"), .help = N_("The revision that is no longer proven."), \
     .target = &bb_revision_table, .required = TRUE) \
  F (T, REFERENCE, wash_test, N_("Specimen"), .help = N_("The specimen that it came by."), \
     .target = &bb_wash_test_table) \
  F (T, INTEGER, cycles, N_("Cycles"), .help = N_("The reading that it came by."), .limits = BB_BETWEEN (0, 500)) \
  F (T, REFERENCE, person, N_("By"), .help = N_("In whose name that was written."), .target = &bb_person_table) \
  F (T, DATE, seen_at, N_("Seen"), .help = N_("When somebody took note of it.")) \
  F (T, REFERENCE, seen_by, N_("Seen by"), .help = N_("Who took note of it."), .target = &bb_person_table)

BB_DECLARE_TABLE (BbNotice, bb_notice, BB_NOTICE_FIELDS);

char *bb_notice_describe (const BbNotice *self,
                          const char     *revision,
                          const char     *specimen);

G_END_DECLS
