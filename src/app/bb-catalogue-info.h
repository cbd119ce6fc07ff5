/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bb-finder.h"

G_BEGIN_DECLS

/**
 * BbCatalogueInfo:
 * @finder: what the list finds
 * @add_title: what the button that adds a record says, marked for translation
 * @other_title: (nullable): what another button of the empty catalogue says, marked for translation
 * @other_action: (nullable): the action of that button
 * @icon_name: icon of the empty catalogue
 * @empty_title: title of the empty catalogue, marked for translation
 * @empty_text: what to do first, marked for translation
 * @has_labels: %TRUE for what gets a label with a code on it
 *
 * What a #BbCatalogue holds.
 */
typedef struct {
  BbFinderInfo finder;
  const char *add_title;
  const char *other_title;
  const char *other_action;
  const char *icon_name;
  const char *empty_title;
  const char *empty_text;
  gboolean has_labels;
} BbCatalogueInfo;

G_END_DECLS
