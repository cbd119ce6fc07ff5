/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-editor"

#include "bb-editor.h"

#include <glib/gi18n-lib.h>

#include "bb-book-jobs.h"
#include "bb-form-rules.h"
#include "bb-remark.h"
#include "bb-show.h"
#include "bb-side-by-side.h"

/* Long enough not to write at every key, short enough to lose next to nothing. */
#define KEEP_AFTER_MS 600

#define FORM_WIDTH 720

/* What is kept: the table's name and what is typed. */
#define KEPT_TYPE "(sa{ss})"

struct _BbEditor
{
  AdwBin parent_instance;

  /* template */
  GtkLabel *title_label;
  GtkLabel *subtitle_label;
  GtkRevealer *fault_revealer;
  GtkRevealer *remark_revealer;
  GtkLabel *remark_label;
  GtkScrolledWindow *scrolled;
  AdwClamp *clamp;

  /* owned */
  BbSession *session;
  char *key;
  const BbTable *table;

  /* What stands beside the form of one table. */
  const BbTable *aside_table;
  BbEditorAside make_aside;

  BbForm *form;
  guint keep_source;
  gboolean saving;
};

G_DEFINE_FINAL_TYPE (BbEditor, bb_editor, ADW_TYPE_BIN)

enum {
  SIGNAL_DONE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

/* Shared with the writing thread, which gives the record its key; read here only after it is done. */
typedef struct {
  BbEditor *editor;
  const BbTable *table;
  gpointer record;
} Saving;

static void
saving_clear (gpointer data)
{
  Saving *self = data;

  bb_record_free (self->table, self->record);
}

static void
saving_release (gpointer data)
{
  g_atomic_rc_box_release_full (data, saving_clear);
}

static gboolean
write_weighing (BbBook            *book,
                const BbWeighing  *weighing,
                GError           **error)
{
  return bb_book_weigh_lot (book, weighing->lot, weighing->scale_g, weighing->note, error);
}

static gboolean
write_record (BbBook   *book,
              gpointer  data,
              GError  **error)
{
  Saving *self = data;

  if (self->table == &bb_revision_table)
    return bb_book_save_revision (book, self->record, error);
  if (self->table == &bb_job_line_table)
    return bb_book_save_job_line (book, self->record, error);
  if (self->table == &bb_run_table)
    return bb_book_save_run (book, self->record, error);
  if (self->table == &bb_weighing_table)
    return write_weighing (book, self->record, error);
  if (self->table == &bb_disposal_table)
    return bb_book_dispose_of_lot (book, self->record, error);

  return bb_book_save (book, self->table, self->record, error);
}

static char *
describe (BbEditor *self)
{
  g_autoptr (GVariant) state = g_variant_ref_sink (bb_form_save_state (self->form));
  g_autoptr (GVariant) kept = g_variant_ref_sink (g_variant_new ("(s@a{ss})", self->table->name, state));

  return g_variant_print (kept, FALSE);
}

static void
keep (BbEditor *self)
{
  g_autofree char *text = NULL;

  g_clear_handle_id (&self->keep_source, g_source_remove);
  if (self->form == NULL)
    return;
  text = describe (self);
  bb_session_keep_form (self->session, self->key, text);
}

static gboolean
keep_later_cb (gpointer data)
{
  BbEditor *self = BB_EDITOR (data);

  self->keep_source = 0;
  keep (self);

  return G_SOURCE_REMOVE;
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
  g_clear_handle_id (&self->keep_source, g_source_remove);
  self->keep_source = g_timeout_add (KEEP_AFTER_MS, keep_later_cb, self);
}

static void
closing_cb (BbEditor *self)
{
  if (self->keep_source != 0)
    keep (self);
}

static void
shut (BbEditor *self)
{
  g_clear_handle_id (&self->keep_source, g_source_remove);
  adw_clamp_set_child (self->clamp, NULL);
  gtk_revealer_set_reveal_child (self->fault_revealer, FALSE);
  self->form = NULL;
}

static void
finish (BbEditor *self,
        gint64    id)
{
  const BbTable *table = self->table;

  shut (self);
  bb_session_keep_form (self->session, self->key, NULL);
  g_signal_emit (self, signals[SIGNAL_DONE], 0, table, id);
}

static void
focus_first_fault (BbEditor *self)
{
  gtk_revealer_set_reveal_child (self->fault_revealer, TRUE);
  bb_form_focus_fault (self->form);
}

/* What the book refuses for one field is said at that field. */
static void
show_refusal (BbEditor     *self,
              BbSession    *session,
              const GError *error)
{
  if (self->form != NULL && bb_form_show_fault (self->form, error->message, TRUE))
    focus_first_fault (self);
  else
    bb_session_report (session, error);
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  Saving *saving = data;
  g_autoptr (BbEditor) self = saving->editor;
  g_autoptr (GError) error = NULL;

  self->saving = FALSE;
  if (!bb_session_write_finish (BB_SESSION (source), result, &error))
    show_refusal (self, BB_SESSION (source), error);
  else if (self->form != NULL)
    finish (self, bb_record_get_key (saving->table, saving->record));

  saving_release (saving);
}

static void
save_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  BbEditor *self = BB_EDITOR (widget);
  Saving *saving = NULL;
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

  saving = g_atomic_rc_box_new0 (Saving);
  saving->editor = g_object_ref (self);
  saving->table = self->table;
  saving->record = record;
  self->saving = TRUE;
  bb_session_write_async (self->session, write_record, g_atomic_rc_box_acquire (saving), saving_release,
                          saved_cb, saving);
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

/* What the record belongs to: a colour to its blank, a revision to its recipe, a reading to its specimen. */
static char *
describe_owner (BbEditor      *self,
                gconstpointer  record)
{
  for (guint i = 0; i < self->table->n_fields; i++)
    {
      const BbField *field = &self->table->fields[i];

      if (field->owner && bb_field_is_set (field, record))
        return bb_show_name (self->session, field->target, bb_field_get_integer (field, record));
    }

  return NULL;
}

static char *
get_text (BbEditor      *self,
          gconstpointer  record,
          const char    *name)
{
  const BbField *field = bb_table_find_field (self->table, name);

  return field != NULL ? g_strdup (bb_field_get_text (field, record)) : NULL;
}

static void
show_title (BbEditor      *self,
            gconstpointer  record)
{
  const BbField *id = bb_table_find_field (self->table, "id");
  const gboolean is_new = id != NULL && !bb_field_is_set (id, record);
  g_autofree char *owner = describe_owner (self, record);
  g_autofree char *name = get_text (self, record, "name");
  g_autofree char *code = get_text (self, record, "code");
  g_autoptr (GStrvBuilder) parts = g_strv_builder_new ();
  g_auto (GStrv) list = NULL;
  g_autofree char *subtitle = NULL;

  if (is_new)
    g_strv_builder_add (parts, _("New"));
  if (name != NULL)
    g_strv_builder_add (parts, name);
  if (code != NULL)
    g_strv_builder_add (parts, code);
  if (owner != NULL)
    g_strv_builder_add (parts, owner);
  list = g_strv_builder_end (parts);
  subtitle = g_strjoinv (" · ", list);
  gtk_label_set_label (self->title_label, _(self->table->title));
  gtk_label_set_label (self->subtitle_label, subtitle);
  gtk_widget_set_visible (GTK_WIDGET (self->subtitle_label), *subtitle != '\0');
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
  self->table = table;
  self->form = BB_FORM (bb_form_new (self->session, table));
  bb_form_load (self->form, record);
  show_form (self);
  g_signal_connect_object (self->form, "changed", G_CALLBACK (form_changed_cb), self, G_CONNECT_SWAPPED);
  show_title (self, record);
  bb_form_rules_apply (self->form, self->session);
  show_remark (self);
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
  self->key = g_strdup (key);
  g_signal_connect_object (session, "closing", G_CALLBACK (closing_cb), self, G_CONNECT_SWAPPED);
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

  keep (self);
}

static gpointer
load_base (BbEditor      *self,
           const BbTable *table,
           GVariant      *state)
{
  const char *key = NULL;
  gpointer record = NULL;

  if (g_variant_lookup (state, "id", "&s", &key))
    record = bb_book_load (bb_session_get_book (self->session), table, g_ascii_strtoll (key, NULL, 10), NULL);

  return record != NULL ? record : bb_record_new (table);
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
  g_autofree char *text = bb_session_dup_form (self->session, self->key);
  g_autoptr (GVariant) kept = NULL;
  g_autoptr (GVariant) state = NULL;
  const char *name = NULL;
  const BbTable *table = NULL;
  gpointer record = NULL;

  if (text == NULL)
    return FALSE;
  kept = g_variant_parse (G_VARIANT_TYPE (KEPT_TYPE), text, NULL, NULL, NULL);
  if (kept == NULL)
    return FALSE;
  g_variant_get (kept, "(&s@a{ss})", &name, &state);
  table = bb_book_find_table (name);
  if (table == NULL)
    return FALSE;

  record = load_base (self, table, state);
  open_form (self, table, record);
  bb_form_load_state (self->form, state);
  bb_form_rules_apply (self->form, self->session);
  show_remark (self);
  bb_record_free (table, record);

  return TRUE;
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

static void
bb_editor_dispose (GObject *object)
{
  BbEditor *self = BB_EDITOR (object);

  g_clear_handle_id (&self->keep_source, g_source_remove);
  self->form = NULL;
  g_clear_object (&self->session);
  adw_bin_set_child (ADW_BIN (self), NULL);

  G_OBJECT_CLASS (bb_editor_parent_class)->dispose (object);
}

static void
bb_editor_finalize (GObject *object)
{
  g_free (BB_EDITOR (object)->key);

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

  gtk_widget_class_set_template_from_resource (widget_class, "/io/blankbook/Blankbook/bb-editor.ui");
  gtk_widget_class_bind_template_child (widget_class, BbEditor, title_label);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, subtitle_label);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, fault_revealer);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, remark_revealer);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, remark_label);
  gtk_widget_class_bind_template_child (widget_class, BbEditor, scrolled);
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
