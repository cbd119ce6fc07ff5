/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-field-hint"

#include "bb-field-hint.h"

#include <glib/gi18n-lib.h>

#include "bb-show.h"

struct _BbFieldHint
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *label;

  /* owned */
  BbSession *session;
  char *fault;
  char *advice;

  const BbField *field;
  gboolean attended;
  gboolean named;
};

G_DEFINE_FINAL_TYPE (BbFieldHint, bb_field_hint, ADW_TYPE_BIN)

static char *
describe_help (BbFieldHint *self)
{
  g_autofree char *limits = bb_show_limits (self->session, self->field);

  return g_strjoin (" ", _(self->field->help), limits, NULL);
}

/* What is wrong is all that matters; advice stays there, also where the keyboard is elsewhere. */
static char *
describe (BbFieldHint *self)
{
  g_autofree char *help = NULL;

  if (self->fault != NULL)
    return g_strdup (self->fault);
  if (self->attended)
    help = describe_help (self);
  if (self->advice == NULL || help == NULL)
    return self->advice != NULL ? g_strdup (self->advice) : g_steal_pointer (&help);

  return g_strjoin ("\n", self->advice, help, NULL);
}

static void
show_text (BbFieldHint *self,
           const char  *text)
{
  /* Translators: the title of a field, and what is to be said of it. */
  g_autofree char *named = self->named ? g_strdup_printf (_("%s: %s"), _(self->field->title), text) : NULL;

  gtk_label_set_label (self->label, named != NULL ? named : text);
}

static void
bb_field_hint_dispose (GObject *object)
{
  adw_bin_set_child (ADW_BIN (object), NULL);
  g_clear_object (&BB_FIELD_HINT (object)->session);

  G_OBJECT_CLASS (bb_field_hint_parent_class)->dispose (object);
}

static void
bb_field_hint_finalize (GObject *object)
{
  g_free (BB_FIELD_HINT (object)->fault);
  g_free (BB_FIELD_HINT (object)->advice);

  G_OBJECT_CLASS (bb_field_hint_parent_class)->finalize (object);
}

static void
bb_field_hint_class_init (BbFieldHintClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_field_hint_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_field_hint_finalize;

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-field-hint.ui");
  gtk_widget_class_bind_template_child (widget_class, BbFieldHint, label);
}

static void
bb_field_hint_init (BbFieldHint *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_field_hint_set_field:
 * @self: a hint
 * @session: the session, in whose units limits are told
 * @field: a field
 *
 * To be called once.
 */
void
bb_field_hint_set_field (BbFieldHint   *self,
                         BbSession     *session,
                         const BbField *field)
{
  g_return_if_fail (BB_IS_FIELD_HINT (self) && BB_IS_SESSION (session) && field != NULL);

  g_set_object (&self->session, session);
  self->field = field;
}

/**
 * bb_field_hint_set_named:
 * @self: a hint, with its field
 *
 * Says which field it speaks of: it stands apart from it, beside those of others.
 */
void
bb_field_hint_set_named (BbFieldHint *self)
{
  g_return_if_fail (BB_IS_FIELD_HINT (self) && self->field != NULL);

  self->named = TRUE;
  bb_field_hint_refresh (self);
}

/**
 * bb_field_hint_set_attended:
 * @self: a hint, with its field
 * @attended: whether the keyboard is in the field
 */
void
bb_field_hint_set_attended (BbFieldHint *self,
                            gboolean     attended)
{
  g_return_if_fail (BB_IS_FIELD_HINT (self));

  self->attended = attended;
  bb_field_hint_refresh (self);
}

/**
 * bb_field_hint_set_fault:
 * @self: a hint, with its field
 * @fault: (nullable): what is wrong with the value, or %NULL if nothing is
 */
void
bb_field_hint_set_fault (BbFieldHint *self,
                         const char  *fault)
{
  g_return_if_fail (BB_IS_FIELD_HINT (self));

  if (g_strcmp0 (fault, self->fault) != 0)
    {
      g_free (self->fault);
      self->fault = g_strdup (fault);
    }
  bb_field_hint_refresh (self);
}

/**
 * bb_field_hint_set_advice:
 * @self: a hint, with its field
 * @advice: (nullable): what a person should know of the value, although it is allowed; %NULL for nothing
 */
void
bb_field_hint_set_advice (BbFieldHint *self,
                          const char  *advice)
{
  g_return_if_fail (BB_IS_FIELD_HINT (self));

  if (g_strcmp0 (advice, self->advice) == 0)
    return;
  g_free (self->advice);
  self->advice = g_strdup (advice);
  bb_field_hint_refresh (self);
}

/**
 * bb_field_hint_has_fault:
 * @self: a hint
 *
 * Returns: %TRUE if it says that something is wrong with the value
 */
gboolean
bb_field_hint_has_fault (BbFieldHint *self)
{
  g_return_val_if_fail (BB_IS_FIELD_HINT (self), FALSE);

  return self->fault != NULL;
}

/**
 * bb_field_hint_refresh:
 * @self: a hint, with its field
 *
 * Tells limits in the units that hold now.
 */
void
bb_field_hint_refresh (BbFieldHint *self)
{
  g_autofree char *text = NULL;

  g_return_if_fail (BB_IS_FIELD_HINT (self) && self->field != NULL);

  if (self->fault != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self->label), "faulty");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->label), "faulty");
  text = describe (self);
  if (text != NULL)
    show_text (self, text);
  gtk_widget_set_visible (GTK_WIDGET (self), text != NULL);
}
