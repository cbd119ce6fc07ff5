/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-exchange.h"

/* Each test has a book in a folder of its own, which goes with the test: an empty one, or a copy of the demo shop's. */
typedef struct {
  char *folder;
  BbBook *book;
} Fixture;

/* A small shop with everything in it once; %s stands for what a test wants to add. */
#define SHOP_HEAD \
  "{\"format\":\"blankbook-book\",\"version\":1,\"about\":\"a test\"," \
  "\"person\":[{\"code\":\"AB\",\"name\":\"Abel Bench\",\"role\":\"lead\"}]," \
  "\"blank\":[{\"code\":\"TEE\",\"name\":\"Tee\",\"composition\":[{\"fibre\":\"cotton\",\"fraction\":1}]," \
  "\"mass_g_per_m2\":180,\"knit\":\"jersey\"}]," \
  "\"colourway\":[{\"code\":\"TEE-NAVY\",\"blank\":\"TEE\",\"name\":\"Navy\",\"srgb\":\"#1b2a49\"}]," \
  "\"supply\":[{\"code\":\"PT\",\"name\":\"Pretreat\",\"kind\":\"pretreat\"}]," \
  "\"recipe\":[{\"code\":\"R\",\"name\":\"Navy tee\",\"blank\":\"TEE\",\"shade\":\"dark\"}],"
#define SHOP_REVISION(code, number, more) \
  "{\"code\":\"" code "\",\"recipe\":\"R\",\"number\":" number ",\"made_at\":\"2025-03-14\",\"made_by\":\"AB\"," \
  "\"pretreat_product\":\"PT\",\"pretreat_parts_concentrate\":1,\"pretreat_parts_water\":2," \
  "\"pretreat_laydown_g_per_m2\":120,\"dry_c\":150,\"dry_s\":40,\"print_mode\":\"underbase\"," \
  "\"print_white_g_per_m2\":150,\"cure_c\":160,\"cure_s\":90,\"proof_cycles\":20" more "}"
#define SHOP_REVISIONS "\"revision\":[" SHOP_REVISION ("R.1", "1", ",\"proof_stain\":null") "],"
#define SHOP_TAIL \
  "\"signature\":[{\"revision\":\"R.1\",\"signed_at\":\"2025-04-01\",\"person\":\"AB\",\"overruled\":true," \
  "\"reason\":\"Years of shirts.\",\"passed\":0,\"failed\":0,\"needed\":3}]," \
  "\"standing\":[{\"revision\":\"R.1\",\"state\":\"proven\",\"since\":\"2025-04-01\",\"person\":\"AB\"}]," \
  "\"wash_test\":[{\"code\":\"S-1\",\"revision\":\"R.1\",\"colourway\":\"TEE-NAVY\",\"method\":\"shop\"," \
  "\"plan_cycles\":20,\"made_at\":\"2025-03-15\",\"person\":\"AB\"}]," \
  "\"reading\":[{\"wash_test\":\"S-1\",\"cycles\":5,\"change\":\"4-5\",\"read_at\":\"2025-03-20\",\"person\":\"AB\"}]}"
#define SHOP SHOP_HEAD SHOP_REVISIONS SHOP_TAIL

void       set_up       (Fixture       *self,
                         gconstpointer  data);
void       tear_down    (Fixture       *self,
                         gconstpointer  data);
BbBook    *make_book    (Fixture       *self,
                         const char    *name);
char      *load_demo    (void);
BbImported import       (BbBook        *book,
                         const char    *text);
char      *export       (BbBook        *book);
guint      count        (BbBook        *book,
                         const BbTable *table);
void       assert_empty (BbBook        *book);
int        run_tests    (int            argc,
                         char         **argv,
                         void         (*add) (const char *demo));

#define ADD(path, func) g_test_add (path, Fixture, NULL, set_up, func, tear_down)
#define ADD_IN_DEMO(path, func) g_test_add (path, Fixture, demo, set_up, func, tear_down)
