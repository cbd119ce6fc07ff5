/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <sqlite3.h>

#include "bb-book-jobs.h"
#include "bb-book-pictures.h"
#include "bb-error.h"

G_BEGIN_DECLS

/* A path in a folder of its own under the test's temporary folder. */
char       *helper_new_path         (void);
BbBook     *helper_create           (const char     *path);
BbBook     *helper_open             (const char     *path);
void        helper_close            (BbBook         *book);

/* Records as a shop would have them, all invented; each refers to those before it. */
typedef struct {
  BbPerson *person;
  BbBlank *blank;
  BbColourway *colourway;
  BbSupply *pretreat;
  BbSupply *sheet;
  BbRecipe *recipe;
  BbRevision *revision;
  BbWashTest *wash_test;
  BbReading *reading;
  BbPicture *picture;
  BbScan *scan;
  BbCustomer *customer;
  BbEquipment *press;
  BbLot *lot;
  BbJob *job;
  BbJobLine *line;
  BbRun *run;
  BbWashPlan *plan;
} Shop;

BbPerson    *helper_make_person     (const char     *code);
BbBlank     *helper_make_blank      (const char     *code,
                                     const char     *name);
BbColourway *helper_make_colourway  (const char     *code,
                                     gint64          blank,
                                     const char     *name);
BbSupply    *helper_make_supply     (const char     *code,
                                     BbSupplyKind    kind);
BbRecipe    *helper_make_recipe     (const char     *code,
                                     const char     *name,
                                     gint64          blank);
BbRevision  *helper_make_revision   (gint64          recipe,
                                     gint64          pretreat);
BbWashPlan  *helper_make_wash_plan  (const char     *code);
BbWashTest  *helper_make_wash_test  (const char     *code,
                                     gint64          revision);
BbReading   *helper_make_reading    (gint64          wash_test,
                                     gint64          cycles);
BbCustomer  *helper_make_customer   (const char     *code,
                                     const char     *name);
BbEquipment *helper_make_equipment  (const char     *code,
                                     BbEquipmentKind kind);
BbLot       *helper_make_lot        (const char     *code,
                                     gint64          supply);
BbJob       *helper_make_job        (const char     *code,
                                     gint64          customer);
BbJobLine   *helper_make_line       (gint64          job,
                                     gint64          colourway,
                                     gint64          revision);
BbPicture   *helper_make_picture    (const char     *name);
BbScan      *helper_make_scan       (gint64          wash_test,
                                     gint64          picture,
                                     gint64          cycles);
void         helper_save            (BbBook         *book,
                                     const BbTable  *table,
                                     gpointer        record);
GArray      *helper_search          (BbBook         *book,
                                     const BbTable  *table,
                                     const char     *text,
                                     guint           limit);
Shop        *helper_fill            (BbBook         *book);
void         helper_fill_jobs       (BbBook         *book,
                                     Shop           *shop);
void         helper_put_on_trial    (BbBook         *book,
                                     gint64          revision);
void         helper_add_passed      (BbBook         *book,
                                     gint64          revision,
                                     guint           n);
void         helper_prove           (BbBook         *book,
                                     gint64          revision);
void         helper_shop_free       (Shop           *shop);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Shop, helper_shop_free)

/* Fails unless a message is one line of text that can be shown. */
void         helper_assert_line     (const char     *message);

/* The book as another program sees it: plain SQL, and none of our settings. */
sqlite3    *helper_open_plain       (const char     *path);
int         helper_run_plain        (sqlite3        *plain,
                                     const char     *sql);
char       *helper_query_plain      (sqlite3        *plain,
                                     const char     *sql);
gint64      helper_count_plain      (sqlite3        *plain,
                                     const char     *sql);

G_END_DECLS
