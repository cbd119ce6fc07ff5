/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-preferences"

#include "bb-preferences.h"

#include <glib/gi18n-lib.h>

#include "bb-compat.h"

/* Letters of a currency's code, ISO 4217. */
#define CODE_LENGTH 3

struct _BbPreferences
{
  AdwWindow parent_instance;

  /* template */
  GtkDropDown *units_drop_down;
  GtkDropDown *scheme_drop_down;
  GtkEntry *currency_entry;

  /* owned */
  GSettings *settings;
};

G_DEFINE_FINAL_TYPE (BbPreferences, bb_preferences, ADW_TYPE_WINDOW)

/* In the order of the drop-downs' items. */
static const char * const unit_systems[] = { "metric", "us", NULL };
static const char * const schemes[] = { "default", "light", "dark", NULL };

static gboolean
to_position (GValue   *value,
             GVariant *variant,
             gpointer  data)
{
  const char * const *names = data;
  const char *name = g_variant_get_string (variant, NULL);

  for (guint i = 0; names[i] != NULL; i++)
    if (g_str_equal (names[i], name))
      {
        g_value_set_uint (value, i);
        return TRUE;
      }

  return FALSE;
}

static GVariant *
from_position (const GValue       *value,
               const GVariantType *type,
               gpointer            data)
{
  const char * const *names = data;
  const guint position = g_value_get_uint (value);

  (void) type;

  return position < g_strv_length ((GStrv) data) ? g_variant_new_string (names[position]) : NULL;
}

static void
bind (BbPreferences      *self,
      const char         *key,
      GtkDropDown        *drop_down,
      const char * const *names)
{
  g_settings_bind_with_mapping (self->settings, key, drop_down, "selected", G_SETTINGS_BIND_DEFAULT, to_position,
                                from_position, (gpointer) names, NULL);
}

static gboolean
is_code (const char *text)
{
  for (const char *p = text; *p != '\0'; p++)
    if (!g_ascii_isalpha (*p))
      return FALSE;

  return strlen (text) == CODE_LENGTH;
}

static void
currency_changed_cb (BbPreferences *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->currency_entry));
  g_autofree char *code = g_ascii_strup (text, -1);

  if (is_code (text))
    {
      gtk_widget_remove_css_class (GTK_WIDGET (self->currency_entry), "error");
      g_settings_set_string (self->settings, "currency", code);
    }
  else
    gtk_widget_add_css_class (GTK_WIDGET (self->currency_entry), "error");
}

static void
bb_preferences_dispose (GObject *object)
{
  BbPreferences *self = BB_PREFERENCES (object);

  g_clear_object (&self->settings);
  gtk_widget_dispose_template (GTK_WIDGET (self), BB_TYPE_PREFERENCES);

  G_OBJECT_CLASS (bb_preferences_parent_class)->dispose (object);
}

static void
bb_preferences_class_init (BbPreferencesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_preferences_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-preferences.ui");
  gtk_widget_class_bind_template_child (widget_class, BbPreferences, units_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbPreferences, scheme_drop_down);
  gtk_widget_class_bind_template_child (widget_class, BbPreferences, currency_entry);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
bb_preferences_init (BbPreferences *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bb_compat_set_name (GTK_WIDGET (self->units_drop_down), _("Units"));
  bb_compat_set_name (GTK_WIDGET (self->scheme_drop_down), _("Appearance"));
}

/**
 * bb_preferences_new:
 * @parent: the window that asks
 * @settings: the program's settings
 *
 * Returns: (transfer none): a window, not yet presented
 */
GtkWidget *
bb_preferences_new (GtkWindow *parent,
                    GSettings *settings)
{
  BbPreferences *self = g_object_new (BB_TYPE_PREFERENCES, "transient-for", parent, NULL);
  g_autofree char *currency = g_settings_get_string (settings, "currency");

  self->settings = g_object_ref (settings);
  bind (self, "unit-system", self->units_drop_down, unit_systems);
  bind (self, "colour-scheme", self->scheme_drop_down, schemes);
  gtk_editable_set_text (GTK_EDITABLE (self->currency_entry), currency);
  g_signal_connect_object (self->currency_entry, "changed", G_CALLBACK (currency_changed_cb), self,
                           G_CONNECT_SWAPPED);

  return GTK_WIDGET (self);
}
