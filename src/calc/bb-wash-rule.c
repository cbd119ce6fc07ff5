/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-calc"

#include "bb-wash-evidence.h"

static char *
describe_wanting (const BbWashEvidence *self)
{
  const guint wanting = (guint) self->shop->proof_specimens - self->n_passed;
  /* Translators: how many of how many; "1 more has to pass." follows. */
  g_autofree char *rule = g_strdup_printf (ngettext ("%u of the %d specimen that the shop's rule asks for passed, and "
                                                     "none failed:",
                                                     "%u of the %d specimens that the shop's rule asks for passed, "
                                                     "and none failed:", (gulong) self->shop->proof_specimens),
                                           self->n_passed, (int) self->shop->proof_specimens);
  g_autofree char *more = g_strdup_printf (ngettext ("%u more has to pass.", "%u more have to pass.", wanting),
                                           wanting);
  g_autofree char *open = self->n_open == 0
                            ? g_strdup (_("None is being washed."))
                            : g_strdup_printf (ngettext ("%u is being washed.", "%u are being washed.", self->n_open),
                                               self->n_open);

  return g_strjoin (" ", rule, more, open, NULL);
}

/**
 * bb_wash_evidence_describe_rule:
 * @self: evidence that was summed up
 *
 * Returns: (transfer full): whether the shop's rule for a proof is met, and what is missing where it is not, in
 *   sentences
 */
char *
bb_wash_evidence_describe_rule (const BbWashEvidence *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  if (self->n_failed > 0)
    return g_strdup_printf (ngettext ("%u specimen failed: by the shop's rule this revision can't be proven any more.",
                                      "%u specimens failed: by the shop's rule this revision can't be proven any "
                                      "more.", self->n_failed), self->n_failed);
  if (self->rule_is_met)
    return g_strdup_printf (ngettext ("The shop's rule is met: %u specimen passed, and none failed.",
                                      "The shop's rule is met: %u specimens passed, and none failed.",
                                      self->n_passed), self->n_passed);

  return describe_wanting (self);
}
