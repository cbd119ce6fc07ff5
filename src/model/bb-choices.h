/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BbChoice:
 * @key: the stored and exchanged word; never translated
 * @title: what a person reads, marked for translation
 */
typedef struct {
  const char *key;
  const char *title;
} BbChoice;

/**
 * BbChoices:
 *
 * A closed set of words. In a record a choice is an `int`, the index into @items, so that the C
 * enumeration of the same set can be used in `switch`; %BB_CHOICE_NONE where nothing is chosen.
 */
typedef struct {
  const char *name;
  const BbChoice *items;
  guint n_items;
} BbChoices;

#define BB_CHOICE_NONE (-1)

int         bb_choices_find      (const BbChoices *self,
                                  const char      *key);
const char *bb_choices_get_key   (const BbChoices *self,
                                  int              index);
const char *bb_choices_get_title (const BbChoices *self,
                                  int              index);

/* A set is listed once, as a macro C (enumerator, key, title); these make its enumeration and table. */
#define BB_CHOICE_ENUMERATOR(enumerator, key, title) enumerator,
#define BB_CHOICE_ITEM(enumerator, key, title) { key, title },
#define BB_DECLARE_CHOICES(Type, prefix, LIST) \
  typedef enum { LIST (BB_CHOICE_ENUMERATOR) } Type; \
  extern const BbChoices prefix##_choices
#define BB_DEFINE_CHOICES(prefix, name, LIST) \
  static const BbChoice prefix##_items[] = { LIST (BB_CHOICE_ITEM) }; \
  const BbChoices prefix##_choices = { name, prefix##_items, G_N_ELEMENTS (prefix##_items) }

G_END_DECLS
