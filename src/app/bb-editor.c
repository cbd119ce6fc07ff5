/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-editor"

#include "bb-editor.h"

#include <glib/gi18n-lib.h>

#include "bb-after-paint.h"
#include "bb-editor-title.h"
#include "bb-form-rules.h"
#include "bb-keeper.h"
#include "bb-kept-form.h"
#include "bb-remark.h"
#include "bb-session-record.h"
#include "bb-side-by-side.h"

#define FORM_WIDTH 720

/* What stands around a field that is brought into sight, in pixels; and when all is in its place, a little after GTK's
 * revealers, which take 250 ms. */
#define SIGHT_MARGIN 24
#define REVEALED_AFTER_MS 300

struct _BbEditor
{
  AdwBin parent_instance;

  /* template */
  BbEditorTitle *title;
  GtkRevealer *fault_revealer;
  GtkLabel *fault_label;
  GtkRevealer *remark_revealer;
  GtkLabel *remark_label;
  AdwClamp *clamp;

  /* owned */
  BbSession *session;
  BbKeeper *keeper;

  const BbTable *table;

  /* What stands beside the form of one table. */
  const BbTable *aside_table;
  BbEditorAside make_aside;

  BbForm *form;
  gboolean saving;

  /* The form as it was opened, and whether it was cancelled after somebody typed in it, and can be had back. */
  char *untouched;
  gboolean is_aside;

  guint sight_id;
};

G_DEFINE_FINAL_TYPE (BbEditor, bb_editor, ADW_TYPE_BIN)

enum {
  SIGNAL_DONE,
  SIGNAL_TAKEN_UP,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

static char *
describe (gpointer owner)
{
  BbForm *form = BB_EDITOR (owner)->form;

  return form != NULL ? bb_kept_form_describe (form) : NULL;
}

static void
show_remark (BbEditor *self)
{
  gpointer draft = bb_form_dup_draft (self->form);
  g_autofree char *remark = bb_remark_dup (self->session, self->table, draft);

  if (remark != NULL)
    gtk_label_set_label (self->remark_label, remark);
  gtk_revealer_set_reveal_child (self->remark_revealer, remark != NULL);
  bb_record_free (self->table, draft);
}

static void
form_changed_cb (BbEditor *self)
{
  bb_form_rules_apply (self->form, self->session);
  show_remark (self);
  gtk_revealer_set_reveal_child (self->fault_revealer, FALSE);
  bb_keeper_keep_soon (self->keeper);
}

static gboolean
is_typed_in (BbEditor *self)
{
  g_autofree char *now = describe (self);

  return g_strcmp0 (now, self->untouched) != 0;
}

static void
put_aside (BbEditor *self)
{
  gpointer draft = bb_form_dup_draft (self->form);
  g_autofree char *name = bb_editor_title_dup_text (self->session, self->table, draft);

  bb_keeper_put_aside (self->keeper, name);
  self->is_aside = TRUE;
  bb_record_free (self->table, draft);
}

static void
shut (BbEditor *self)
{
  bb_keeper_rest (self->keeper);
  adw_clamp_set_child (self->clamp, NULL);
  gtk_revealer_set_reveal_child (self->fault_revealer, FALSE);
  self->form = NULL;
}

static void
finish (BbEditor *self,
        gint64    id)
{
  const BbTable *table = self->table;

  if (id == 0 && is_typed_in (self))
    put_aside (self);
  else
    bb_keeper_forget (self->keeper);
  shut (self);
  g_signal_emit (self, signals[SIGNAL_DONE], 0, table, id);
}

/* Its message makes a field higher, and what is said above the form pushes all of it down: what GTK scrolls to when the
 * field gets the keyboard is over by then. */
static void
bring_focus_into_sight (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  GtkWidget *row = focus != NULL ? gtk_widget_get_ancestor (focus, BB_TYPE_FIELD_ROW) : NULL;
  GtkWidget *scrolled = gtk_widget_get_ancestor (GTK_WIDGET (BB_EDITOR (widget)->clamp), GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scrolled));
  graphene_rect_t box;

  if (row != NULL && gtk_widget_compute_bounds (row, GTK_WIDGET (BB_EDITOR (widget)->clamp), &box))
    gtk_adjustment_clamp_page (adjustment, box.origin.y - SIGHT_MARGIN,
                               box.origin.y + box.size.height + SIGHT_MARGIN);
}

static void
show_fault (BbEditor   *self,
            const char *text)
{
  gtk_label_set_label (self->fault_label, text);
  gtk_revealer_set_reveal_child (self->fault_revealer, TRUE);
}

static void
focus_first_fault (BbEditor *self)
{
  show_fault (self, _("Something has to be mended before this can be saved. It is marked below."));
  bb_form_focus_fault (self->form);
  bb_after_paint (GTK_WIDGET (self), &self->sight_id, REVEALED_AFTER_MS, bring_focus_into_sight);
}

/* What the book refuses for one field is said at that field; anything else above them all, and not behind a dialog. */
static void
show_refusal (BbEditor     *self,
              BbSession    *session,
              const GError *error)
{
  g_autofree char *text = NULL;

  if (self->form == NULL)
    {
      bb_session_report (session, error);
      return;
    }
  if (bb_form_show_fault (self->form, error->message, TRUE))
    {
      focus_first_fault (self);
      return;
    }
  text = bb_fault_to_text (self->table, error->message);
  show_fault (self, text);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  g_autoptr (BbEditor) self = data;
  g_autoptr (GError) error = NULL;
  const gint64 id = bb_session_save_record_finish (BB_SESSION (source), result, &error);

  self->saving = FALSE;
  if (error != NULL)
    show_refusal (self, BB_SESSION (source), error);
  else if (self->form != NULL)
    finish (self, id);
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbEditor *self = BB_EDITOR (widget);
  gpointer record = NULL;

  (void) name;
  (void) parameter;

  if (self->form == NULL || self->saving)
    return;

  record = bb_form_dup_record (self->form, TRUE);
  if (record == NULL)
    {
      focus_first_fault (self);
      return;
    }
  self->saving = TRUE;
  bb_session_save_record_async (self->session, self->table, record, saved_cb, g_object_ref (self));
}

static void
cancel_action (GtkWidget  *widget,
               const char *name,
               GVariant   *parameter)
{
  BbEditor *self = BB_EDITOR (widget);

  (void) name;
  (void) parameter;

  if (self->form != NULL && !self->saving)
    finish (self, 0);
}

static void
show_form (BbEditor *self)
{
  GtkWidget *both = NULL;

  if (self->make_aside == NULL || self->table != self->aside_table)
    {
      adw_clamp_set_maximum_size (self->clamp, FORM_WIDTH);
      adw_clamp_set_child (self->clamp, GTK_WIDGET (self->form));
      return;
    }
  both = bb_side_by_side_new (GTK_WIDGET (self->form), self->make_aside (self->form, self->session));
  adw_clamp_set_maximum_size (self->clamp, 2 * FORM_WIDTH);
  adw_clamp_set_tightening_threshold (self->clamp, 2 * FORM_WIDTH);
  adw_clamp_set_child (self->clamp, both);
}

static void
open_form (BbEditor      *self,
           const BbTable *table,
           gconstpointer  record)
{
  shut (self);
  self->is_aside = FALSE;
  self->table = table;
  self->form = BB_FORM (bb_form_new (self->session, table));
  bb_form_load (self->form, record);
  show_form (self);
  g_signal_connect_object (self->form, "changed", G_CALLBACK (form_changed_cb), self, G_CONNECT_SWAPPED);
  bb_editor_title_show (self->title, self->session, table, record);
  bb_form_rules_apply (self->form, self->session);
  show_remark (self);
  g_free (self->untouched);
  self->untouched = describe (self);
}

static gboolean
resume (BbEditor   *self,
        const char *text)
{
  g_autoptr (GVariant) state = NULL;
  const BbTable *table = NULL;
  gpointer record = NULL;

  if (text == NULL || !bb_kept_form_parse (text, &table, &state))
    return FALSE;

  record = bb_kept_form_load_record (bb_session_get_book (self->session), table, state);
  open_form (self, table, record);
  bb_form_load_state (self->form, state);
  bb_form_rules_apply (self->form, self->session);
  show_remark (self);
  bb_record_free (table, record);

  return TRUE;
}

/* What is half typed in the meantime is put aside in its turn. */
static void
taken_up_cb (BbEditor   *self,
             const char *key,
             const char *state)
{
  if (!g_str_equal (key, bb_keeper_get_key (self->keeper)) || self->saving)
    return;
  if (self->form != NULL && is_typed_in (self))
    put_aside (self);
  if (!resume (self, state))
    return;
  bb_keeper_keep (self->keeper);
  g_signal_emit (self, signals[SIGNAL_TAKEN_UP], 0);
  bb_form_focus_start (self->form);
}

/**
 * bb_editor_set_aside:
 * @self: an editor, before it gets its session
 * @table: a table
 * @make: makes what stands beside the form of a record of that table
 */
void
bb_editor_set_aside (BbEditor      *self,
                     const BbTable *table,
                     BbEditorAside  make)
{
  g_return_if_fail (BB_IS_EDITOR (self) && self->session == NULL);

  self->aside_table = table;
  self->make_aside = make;
}

/**
 * bb_editor_set_session:
 * @self: an editor
 * @session: the session
 * @key: under which a half-typed form is kept in the book
 */
void
bb_editor_set_session (BbEditor   *self,
                       BbSession  *session,
                       const char *key)
{
  g_return_if_fail (BB_IS_EDITOR (self) && BB_IS_SESSION (session) && key != NULL);
  g_return_if_fail (self->session == NULL);

  self->session = g_object_ref (session);
  self->keeper = bb_keeper_new (session, key, describe, self);
  g_signal_connect_object (session, "taken-up", G_CALLBACK (taken_up_cb), self, G_CONNECT_SWAPPED);
}

/**
 * bb_editor_open:
 * @self: an editor
 * @table: the record's table
 * @record: (transfer full): the record to edit; a new one has no key
 * @fixed: (nullable): a field that the place where the editor is opened has decided
 *
 * Shows a record to be edited.
 */
void
bb_editor_open (BbEditor      *self,
                const BbTable *table,
                gpointer       record,
                const BbField *fixed)
{
  g_return_if_fail (BB_IS_EDITOR (self) && self->session != NULL);

  open_form (self, table, record);
  if (fixed != NULL)
    bb_form_fix (self->form, fixed);
  bb_record_free (table, record);
  bb_form_focus_start (self->form);
}

/**
 * bb_editor_keep:
 * @self: an editor that is open
 *
 * Keeps the form as if it were half typed: for what is proposed, which is lost with the window where nobody types.
 */
void
bb_editor_keep (BbEditor *self)
{
  g_return_if_fail (BB_IS_EDITOR (self) && self->form != NULL);

  bb_keeper_keep (self->keeper);
}

/**
 * bb_editor_resume:
 * @self: an editor
 *
 * Brings back what was half typed when the window was closed.
 *
 * Returns: %TRUE if there was something
 */
gboolean
bb_editor_resume (BbEditor *self)
{
  g_autofree char *text = NULL;

  g_return_val_if_fail (BB_IS_EDITOR (self) && self->session != NULL, FALSE);

  text = bb_keeper_dup_kept (self->keeper);

  return resume (self, text);
}

/**
 * bb_editor_focus:
 * @self: an editor that is open
 *
 * Puts the keyboard where a person begins.
 */
void
bb_editor_focus (BbEditor *self)
{
  g_return_if_fail (BB_IS_EDITOR (self));

  if (self->form != NULL)
    bb_form_focus_start (self->form);
}

/**
 * bb_editor_is_open:
 * @self: an editor
 *
 * Returns: %TRUE if a record is being edited
 */
gboolean
bb_editor_is_open (BbEditor *self)
{
  g_return_val_if_fail (BB_IS_EDITOR (self), FALSE);

  return self->form != NULL;
}

/**
 * bb_editor_is_put_aside:
 * @self: an editor
 *
 * Returns: %TRUE if what was half typed in it was cancelled last, and may be wanted back
 */
gboolean
bb_editor_is_put_aside (BbEditor *self)
{
  g_return_val_if_fail (BB_IS_EDITOR (self), FALSE);

  return self->is_aside;
}

static void
bb_editor_dispose (GObject *object)
{
  BbEditor *self = BB_EDITOR (object);

  self->form = NULL;
  g_clear_object (&self->keeper);
  g_clear_object (&self->session);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_editor_parent_class)->dispose (object);
}

static void
bb_editor_finalize (GObject *object)
{
  g_free (BB_EDITOR (object)->untouched);

  G_OBJECT_CLASS (bb_editor_parent_class)->finalize (object);
}

static void
bb_editor_class_init (BbEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = bb_editor_dispose;
  G_OBJECT_CLASS (klass)->finalize = bb_editor_finalize;

  /**
   * BbEditor::done:
   * @table: the table of the record that was edited
   * @id: its key if it was saved, 0 if it was given up
   */
  signals[SIGNAL_DONE] = g_signal_new ("done", BB_TYPE_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_INT64);
  /**
   * BbEditor::taken-up:
   *
   * A form that was cancelled is open again: the person did not mean it.
   */
  signals[SIGNAL_TAKEN_UP] = g_signal_new ("taken-up", BB_TYPE_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                           G_TYPE_NONE, 0);

  g_type_ensure (BB_TYPE_EDITOR_TITLE);
  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-editor.ui");
  gtk_widget_class_bind_template_child (widget_class, BbEditor, title);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, fault_revealer);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, fault_label);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, remark_revealer);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, remark_label);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, clamp);
  gtk_widget_class_install_action (widget_class, "editor.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "editor.cancel", NULL, cancel_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, GDK_CONTROL_MASK, "editor.save", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "editor.cancel", NULL);
}

static void
bb_editor_init (BbEditor *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
