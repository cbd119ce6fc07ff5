/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-proof-compare"

#include "bb-proof-compare.h"

#include <glib/gi18n-lib.h>

#include "bb-chart-view.h"
#include "bb-evidence-load.h"
#include "bb-moment.h"
#include "bb-wash-charts.h"

struct _BbProofCompare
{
  GtkBox parent_instance;

  /* template */
  BbChartView *lives_view;
  BbChartView *rates_view;

  /* owned */
  BbSession *session;
  GCancellable *loading;
  char *sentence;
};

G_DEFINE_FINAL_TYPE (BbProofCompare, bb_proof_compare, GTK_TYPE_BOX)

enum {
  PROP_SENTENCE = 1,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

typedef struct {
  gint64 first;
  gint64 second;
} Pair;

static gpointer
read_both (BbBook    *book,
           gpointer   data,
           GError   **error)
{
  const Pair *pair = data;
  const gint64 keys[] = { pair->first, pair->second };
  g_autofree char *today = bb_dup_today ();
  g_autoptr (GPtrArray) both = g_ptr_array_new_with_free_func ((GDestroyNotify) bb_wash_evidence_free);

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    {
      BbWashEvidence *evidence = bb_evidence_load (book, keys[i], today, error);

      if (evidence == NULL)
        return NULL;
      g_ptr_array_add (both, evidence);
    }

  return g_steal_pointer (&both);
}

static void
set_sentence (BbProofCompare *self,
              char           *sentence)
{
  g_free (self->sentence);
  self->sentence = sentence;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SENTENCE]);
}

/* The sentence is the page's to show, above the settings. */
static void
show_charts (BbProofCompare       *self,
             const BbWashEvidence *first,
             const BbWashEvidence *second)
{
  g_autoptr (BbChart) lives = bb_wash_chart_lives (first, second);
  g_autoptr (BbChart) rates = bb_wash_chart_compare (first, second);

  set_sentence (self, g_steal_pointer (&rates->caption));
  gtk_widget_set_visible (GTK_WIDGET (self), !bb_chart_is_empty (lives) || !bb_chart_is_empty (rates));
  bb_chart_view_set_chart (self->lives_view, g_steal_pointer (&lives));
  bb_chart_view_set_chart (self->rates_view, g_steal_pointer (&rates));
}

static void
loaded_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  g_autoptr (BbProofCompare) self = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) both = bb_session_read_finish (BB_SESSION (source), result, &error);

  if (both != NULL)
    show_charts (self, both->pdata[0], both->pdata[1]);
  else
    bb_session_report (BB_SESSION (source), error);
}

static void
cancel (BbProofCompare *self)
{
  if (self->loading != NULL)
    g_cancellable_cancel (self->loading);
  g_clear_object (&self->loading);
}

static void
say_cb (BbProofCompare *self,
        const char     *text)
{
  bb_session_say (self->session, text);
}

/**
 * bb_proof_compare_new:
 *
 * Returns: (transfer floating): a comparison of nothing
 */
GtkWidget *
bb_proof_compare_new (void)
{
  return g_object_new (BB_TYPE_PROOF_COMPARE, NULL);
}

/**
 * bb_proof_compare_show:
 * @self: a comparison
 * @session: the session
 * @first: key of a revision
 * @second: key of another; of the same there is nothing to compare
 *
 * Loads what the wash log has on both, and shows it.
 */
void
bb_proof_compare_show (BbProofCompare *self,
                       BbSession      *session,
                       gint64          first,
                       gint64          second)
{
  const Pair pair = { first, second };

  g_return_if_fail (BB_IS_PROOF_COMPARE (self) && BB_IS_SESSION (session));

  cancel (self);
  g_set_object (&self->session, session);
  set_sentence (self, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  if (first == second)
    return;

  self->loading = g_cancellable_new ();
  bb_session_read_async (session, read_both, g_memdup2 (&pair, sizeof pair), g_free,
                         (GDestroyNotify) g_ptr_array_unref, self->loading, loaded_cb, g_object_ref (self));
}

static void
bb_proof_compare_dispose (GObject *object)
{
  BbProofCompare *self = BB_PROOF_COMPARE (object);

  cancel (self);
  g_clear_object (&self->session);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_PROOF_COMPARE);

  G_OBJECT_CLASS (bb_proof_compare_parent_class)->dispose (object);
}

static void
bb_proof_compare_finalize (GObject *object)
{
  g_free (BB_PROOF_COMPARE (object)->sentence);

  G_OBJECT_CLASS (bb_proof_compare_parent_class)->finalize (object);
}

static void
bb_proof_compare_get_property (GObject    *object,
                               guint       id,
                               GValue     *value,
                               GParamSpec *spec)
{
  if (id == PROP_SENTENCE)
    g_value_set_string (value, BB_PROOF_COMPARE (object)->sentence);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, spec);
}

static void
bb_proof_compare_class_init (BbProofCompareClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_proof_compare_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_proof_compare_finalize;
  G_OBJECT_CLASS (klass)->get_property = bb_proof_compare_get_property;

  /**
   * BbProofCompare:sentence:
   *
   * What the comparison shows, in sentences; %NULL until it is known, and where nothing is compared.
   */
  props[PROP_SENTENCE] = g_param_spec_string ("sentence", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);

  g_type_ensure (BB_TYPE_CHART_VIEW);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-proof-compare.ui");
  gtk_widget_class_bind_template_child (widget_class, BbProofCompare, lives_view);
  gtk_widget_class_bind_template_child (widget_class, BbProofCompare, rates_view);
  gtk_widget_class_bind_template_callback (widget_class, say_cb);
}

static void
bb_proof_compare_init (BbProofCompare *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
