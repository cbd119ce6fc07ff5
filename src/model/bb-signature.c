/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "bb-model"

#include "bb-signature.h"

#include "bb-error.h"

BB_DEFINE_CHOICES (bb_news, "news", BB_NEWS_CHOICES);

static gboolean
check_signature (gconstpointer record,
                 GError      **error)
{
  const BbSignature *self = record;
  g_autofree char *reason = g_strstrip (g_strdup (self->reason != NULL ? self->reason : ""));

  if (self->overruled != 1 || *reason != '\0')
    return TRUE;

  return bb_refuse_value (error, _("reason: say why the shop's rule is overruled."));
}

static char *
describe_failure (const BbNotice *self,
                  const char     *revision,
                  const char     *specimen)
{
  if (specimen == NULL || self->cycles == BB_INTEGER_NONE)
    return g_strdup_printf (_("%s is back on trial: a specimen failed."), revision);

  /* Translators: the code of a revision, then that of a specimen. */
  return g_strdup_printf (ngettext ("%s is back on trial: specimen %s failed after %d wash.",
                                    "%s is back on trial: specimen %s failed after %d washes.",
                                    (gulong) self->cycles),
                          revision, specimen, (int) self->cycles);
}

/**
 * bb_notice_describe:
 * @self: a notice
 * @revision: the code of its revision
 * @specimen: (nullable): the code of its specimen
 *
 * Returns: (transfer full): the news, as one sentence
 */
char *
bb_notice_describe (const BbNotice *self,
                    const char     *revision,
                    const char     *specimen)
{
  g_return_val_if_fail (self != NULL && revision != NULL, NULL);

  switch ((BbNews) self->news)
    {
    case BB_NEWS_FAILED:
      return describe_failure (self, revision, specimen);
    case BB_NEWS_EVIDENCE_GONE:
      return g_strdup_printf (_("%s is back on trial: too few of the specimens are left that it was proven by."),
                              revision);
    case BB_NEWS_BROUGHT_IN:
      return g_strdup_printf (_("%s came in as proven without a signature or the specimens for it, and is on trial."),
                              revision);
    default:
      g_return_val_if_reached (NULL);
    }
}

BB_DEFINE_TABLE (BbShop, bb_shop, "shop", N_("Shop"), BB_SHOP_FIELDS, NULL)
BB_DEFINE_TABLE (BbSignature, bb_signature, "signature", N_("Signature"), BB_SIGNATURE_FIELDS, check_signature)
BB_DEFINE_TABLE (BbNotice, bb_notice, "notice", N_("Notice"), BB_NOTICE_FIELDS, NULL)
