/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-lot-row"

#include "bb-lot-row.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-compat.h"
#include "bb-show.h"
#include "bb-word-badge.h"

struct _BbLotRow
{
  GtkListBoxRow parent_instance;

  /* template */
  GtkLabel *code_label;
  BbWordBadge *badge;
  GtkLabel *left_label;
  GtkLevelBar *level_bar;
  GtkLabel *facts_label;
  GtkBox *buttons;
  GtkExpander *history_expander;
  GtkGrid *history_grid;

  /* owned */
  BbSession *session;

  gint64 id;
  gboolean has_history;
};

G_DEFINE_FINAL_TYPE (BbLotRow, bb_lot_row, GTK_TYPE_LIST_BOX_ROW)

static void
attach (BbLotRow   *self,
        const char *text,
        int         column,
        int         row)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column == 1 ? 1.0f : 0.0f);
  gtk_label_set_yalign (GTK_LABEL (label), 0.0f);
  if (column == 2)
    {
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
      gtk_widget_set_hexpand (label, TRUE);
    }
  else
    gtk_widget_add_css_class (label, "dim-label");
  gtk_grid_attach (self->history_grid, label, column, row, 1, 1);
}

static char *
describe_entry (BbLotRow         *self,
                const BbLotEntry *entry)
{
  const char *deed = bb_choices_get_title (&bb_lot_deed_choices, entry->deed);
  g_autofree char *who = bb_show_name (self->session, &bb_person_table, entry->person);
  g_autoptr (BbRun) run = NULL;
  g_autoptr (GStrvBuilder) parts = g_strv_builder_new ();
  g_auto (GStrv) list = NULL;

  if (entry->run != 0)
    run = bb_book_load (bb_session_get_book (self->session), &bb_run_table, entry->run, NULL);
  g_strv_builder_add (parts, deed);
  if (run != NULL)
    g_strv_builder_add (parts, run->code);
  if (entry->note != NULL)
    g_strv_builder_add (parts, entry->note);
  if (*who != '\0')
    g_strv_builder_add (parts, who);
  list = g_strv_builder_end (parts);

  return g_strjoinv (" · ", list);
}

static void
show_history (BbLotRow *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) entries = bb_book_load_referring (bb_session_get_book (self->session), &bb_lot_entry_table,
                                                          &bb_lot_table, self->id, &error);

  if (entries == NULL)
    {
      bb_session_report (self->session, error);
      return;
    }
  self->has_history = TRUE;
  if (entries->len == 0)
    attach (self, _("Nothing yet."), 0, 0);
  for (guint i = 0; i < entries->len; i++)
    {
      const BbLotEntry *entry = entries->pdata[entries->len - 1 - i];
      const BbField *field = bb_table_find_field (&bb_lot_entry_table, "change_g");
      g_autofree char *day = bb_show_date (entry->at);
      g_autofree char *change = bb_show_field (self->session, &bb_lot_entry_table, field, entry);
      g_autofree char *text = describe_entry (self, entry);

      attach (self, day, 0, (int) i);
      attach (self, change, 1, (int) i);
      attach (self, text, 2, (int) i);
    }
}

/* What nobody opens is not read. */
static void
expanded_cb (BbLotRow *self)
{
  if (!self->has_history && gtk_expander_get_expanded (self->history_expander))
    show_history (self);
}

static void
add_button (BbLotRow   *self,
            const char *label,
            const char *action)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (label);

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", self->id);
  gtk_box_append (self->buttons, button);
}

/* As in other lists, and six buttons with words don't fit a small screen. */
static void
add_edit_button (BbLotRow   *self,
                 const char *code)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("document-edit-symbolic");
  g_autofree char *label = g_strdup_printf (_("Edit %s"), code);

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, label);
  bb_compat_set_name (button, label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "lots.edit");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "x", self->id);
  gtk_box_append (self->buttons, button);
}

static void
add_label_button (BbLotRow *self)
{
  GtkWidget *button = gtk_button_new_with_mnemonic (_("_Label…"));

  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.labels");
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(sx)", bb_lot_table.name, self->id);
  gtk_box_append (self->buttons, button);
}

static void
show_state (BbLotRow      *self,
            const BbStock *lot,
            const char    *today)
{
  if (bb_stock_is_past (lot, today))
    gtk_widget_add_css_class (GTK_WIDGET (self->level_bar), "past");
  if (bb_stock_is_past (lot, today))
    bb_word_badge_say (self->badge, BB_TONE_BAD, _("Past its date"));
  else if (lot->left_g < 0)
    bb_word_badge_say (self->badge, BB_TONE_SOON, _("More was taken than was left: weigh it"));
  else
    bb_word_badge_say (self->badge, BB_TONE_PLAIN, lot->opened_at != NULL ? _("Open") : _("Closed"));
}

static void
show_left (BbLotRow      *self,
           const BbStock *lot)
{
  const BbUnitContext *units = bb_session_get_units (self->session);
  const gboolean is_counted = !isnan (lot->left_g) && !isnan (lot->start_g);
  g_autofree char *text = NULL;

  gtk_widget_set_visible (GTK_WIDGET (self->level_bar), is_counted);
  if (is_counted)
    {
      g_autofree char *left = bb_quantity_format_with_unit (BB_QUANTITY_MASS, lot->left_g, units);
      g_autofree char *start = bb_quantity_format_with_unit (BB_QUANTITY_MASS, lot->start_g, units);

      text = g_strdup_printf (_("%s of %s left"), left, start);
      gtk_level_bar_set_max_value (self->level_bar, lot->start_g);
      gtk_level_bar_set_value (self->level_bar, CLAMP (lot->left_g, 0, lot->start_g));
    }
  gtk_label_set_label (self->left_label, text != NULL ? text : _("Not counted"));
}

static void
take (GStrvBuilder *parts,
      char         *text)
{
  g_strv_builder_add (parts, text);
  g_free (text);
}

static void
show_facts (BbLotRow      *self,
            const BbStock *lot)
{
  g_autofree char *received = bb_show_date (lot->received_at);
  g_autofree char *opened = bb_show_date (lot->opened_at);
  g_autofree char *last = bb_show_date (lot->last_day);
  g_autoptr (GStrvBuilder) parts = g_strv_builder_new ();
  g_auto (GStrv) list = NULL;
  g_autofree char *text = NULL;

  if (lot->last_day != NULL)
    take (parts, g_strdup_printf (_("use by %s"), last));
  if (lot->opened_at != NULL)
    take (parts, g_strdup_printf (_("opened %s"), opened));
  if (lot->received_at != NULL)
    take (parts, g_strdup_printf (_("received %s"), received));
  if (lot->batch != NULL)
    take (parts, g_strdup_printf (_("maker's batch %s"), lot->batch));
  list = g_strv_builder_end (parts);
  text = g_strjoinv (" · ", list);
  gtk_label_set_label (self->facts_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->facts_label), *text != '\0');
}

static void
bb_lot_row_dispose (GObject *object)
{
  g_clear_object (&BB_LOT_ROW (object)->session);
  gtk_widget_dispose_template (GTK_WIDGET (object), BB_TYPE_LOT_ROW);

  G_OBJECT_CLASS (bb_lot_row_parent_class)->dispose (object);
}

static void
bb_lot_row_class_init (BbLotRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_lot_row_dispose;
  g_type_ensure (BB_TYPE_WORD_BADGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-lot-row.ui");
  gtk_widget_class_bind_template_child (widget_class, BbLotRow, code_label);
  gtk_widget_class_bind_template_child (widget_class, BbLotRow, badge);
  gtk_widget_class_bind_template_child (widget_class, BbLotRow, left_label);
  gtk_widget_class_bind_template_child (widget_class, BbLotRow, level_bar);
  gtk_widget_class_bind_template_child (widget_class, BbLotRow, facts_label);
  gtk_widget_class_bind_template_child (widget_class, BbLotRow, buttons);
  gtk_widget_class_bind_template_child (widget_class, BbLotRow, history_expander);
  gtk_widget_class_bind_template_child (widget_class, BbLotRow, history_grid);
  gtk_widget_class_bind_template_callback (widget_class, expanded_cb);
}

static void
bb_lot_row_init (BbLotRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/**
 * bb_lot_row_new:
 * @session: the session
 * @lot: a container as it stands
 * @today: this day, as `YYYY-MM-DD`
 *
 * Returns: (transfer floating): its row
 */
GtkWidget *
bb_lot_row_new (BbSession     *session,
                const BbStock *lot,
                const char    *today)
{
  BbLotRow *self = g_object_new (BB_TYPE_LOT_ROW, NULL);

  self->session = g_object_ref (session);
  self->id = lot->id;
  gtk_label_set_label (self->code_label, lot->code);
  bb_compat_set_name (GTK_WIDGET (self), lot->code);
  show_state (self, lot, today);
  show_left (self, lot);
  show_facts (self, lot);
  /* Nobody opens what may not be poured any more. */
  if (lot->opened_at == NULL && !bb_stock_is_past (lot, today))
    add_button (self, _("_Open"), "lots.open");
  if (!isnan (lot->left_g))
    add_button (self, _("_Weigh…"), "lots.weigh");
  add_button (self, _("_Use Up…"), "lots.dispose");
  add_button (self, _("T_race…"), "lots.trace");
  add_label_button (self);
  add_edit_button (self, lot->code);

  return GTK_WIDGET (self);
}

/**
 * bb_lot_row_get_id:
 * @self: a row
 *
 * Returns: key of its lot
 */
gint64
bb_lot_row_get_id (BbLotRow *self)
{
  g_return_val_if_fail (BB_IS_LOT_ROW (self), 0);

  return self->id;
}
