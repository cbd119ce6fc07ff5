/* SPDX-License-Identifier: GPL-3.0-or-later */
#define G_LOG_DOMAIN "blankbook-compat"

/* Both ends of each difference are named here, so the fence of the rest of the window does not hold. */
#undef GDK_VERSION_MAX_ALLOWED
#undef GDK_VERSION_MIN_REQUIRED
#undef ADW_VERSION_MAX_ALLOWED
#undef ADW_VERSION_MIN_REQUIRED

#include "bb-compat.h"

typedef struct {
  BbCompatFileFunc func;
  gpointer data;
  GDestroyNotify free_data;
} FileAnswer;

static void
file_answer_free (FileAnswer *answer)
{
  if (answer->free_data != NULL)
    answer->free_data (answer->data);
  g_free (answer);
}

/**
 * bb_compat_get_color:
 * @widget: a widget
 * @color: (out): the colour of its text
 */
void
bb_compat_get_color (GtkWidget *widget,
                     GdkRGBA   *color)
{
#if GTK_CHECK_VERSION (4, 10, 0)
  gtk_widget_get_color (widget, color);
#else
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), color);
#endif
}

/**
 * bb_compat_set_name:
 * @widget: a widget
 * @name: what it is called by those who can't see it
 *
 * From GTK 4.18 on buttons and drop-downs are called by the label within them, which goes before a name they are
 * given: "Metric" would not say of what.
 */
void
bb_compat_set_name (GtkWidget  *widget,
                    const char *name)
{
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

/**
 * bb_compat_empty_list:
 * @list: a list box that is filled anew
 *
 * Takes out all its rows.
 */
void
bb_compat_empty_list (GtkListBox *list)
{
#if GTK_CHECK_VERSION (4, 12, 0)
  gtk_list_box_remove_all (list);
#else
  GtkListBoxRow *row = NULL;

  while ((row = gtk_list_box_get_row_at_index (list, 0)) != NULL)
    gtk_list_box_remove (list, GTK_WIDGET (row));
#endif
}

#if GTK_CHECK_VERSION (4, 10, 0)

static void
answer_dialog (FileAnswer *answer,
               GFile      *file)
{
  if (file != NULL)
    {
      answer->func (file, answer->data);
      g_object_unref (file);
    }
  file_answer_free (answer);
}

static void
opened_cb (GObject      *source,
           GAsyncResult *result,
           gpointer      data)
{
  answer_dialog (data, gtk_file_dialog_open_finish (GTK_FILE_DIALOG (source), result, NULL));
}

static void
saved_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  answer_dialog (data, gtk_file_dialog_save_finish (GTK_FILE_DIALOG (source), result, NULL));
}

#else

static void
response_cb (GtkNativeDialog *dialog,
             int              response,
             FileAnswer      *answer)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  if (file != NULL)
    answer->func (file, answer->data);

  file_answer_free (answer);
  g_object_unref (dialog);
}

static void
show_chooser (GtkWindow            *parent,
              const char           *title,
              GtkFileChooserAction  action,
              const char           *name,
              GtkFileFilter        *filter,
              FileAnswer           *answer)
{
  /* Kept until it answers: a native dialog that nobody holds is gone before it is seen. */
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (title, parent, action, NULL, NULL);

  if (name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  if (filter != NULL)
    gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  g_signal_connect (dialog, "response", G_CALLBACK (response_cb), answer);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

#endif

static FileAnswer *
file_answer_new (BbCompatFileFunc func,
                 gpointer         data,
                 GDestroyNotify   free_data)
{
  FileAnswer *answer = g_new0 (FileAnswer, 1);

  answer->func = func;
  answer->data = data;
  answer->free_data = free_data;

  return answer;
}

/**
 * bb_compat_open_file:
 * @parent: the window that asks
 * @title: what is asked for, translated
 * @filter_name: what such files are called, translated
 * @pattern: what their names look like, like `*.book`
 * @func: called with the file, if one is chosen
 * @data: for @func
 * @free_data: (nullable): frees @data once there is an answer, whatever it is
 */
void
bb_compat_open_file (GtkWindow        *parent,
                     const char       *title,
                     const char       *filter_name,
                     const char       *pattern,
                     BbCompatFileFunc  func,
                     gpointer          data,
                     GDestroyNotify    free_data)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, filter_name);
  gtk_file_filter_add_pattern (filter, pattern);

#if GTK_CHECK_VERSION (4, 10, 0)
  {
    g_autoptr (GtkFileDialog) dialog = gtk_file_dialog_new ();

    gtk_file_dialog_set_title (dialog, title);
    gtk_file_dialog_set_default_filter (dialog, filter);
    gtk_file_dialog_open (dialog, parent, NULL, opened_cb, file_answer_new (func, data, free_data));
  }
#else
  show_chooser (parent, title, GTK_FILE_CHOOSER_ACTION_OPEN, NULL, filter, file_answer_new (func, data, free_data));
#endif
}

/**
 * bb_compat_save_file:
 * @parent: the window that asks
 * @title: what is asked for, translated
 * @name: the name proposed
 * @func: called with the file, if one is named
 * @data: for @func
 * @free_data: (nullable): frees @data once there is an answer, whatever it is
 */
void
bb_compat_save_file (GtkWindow        *parent,
                     const char       *title,
                     const char       *name,
                     BbCompatFileFunc  func,
                     gpointer          data,
                     GDestroyNotify    free_data)
{
#if GTK_CHECK_VERSION (4, 10, 0)
  g_autoptr (GtkFileDialog) dialog = gtk_file_dialog_new ();

  gtk_file_dialog_set_title (dialog, title);
  gtk_file_dialog_set_initial_name (dialog, name);
  gtk_file_dialog_save (dialog, parent, NULL, saved_cb, file_answer_new (func, data, free_data));
#else
  show_chooser (parent, title, GTK_FILE_CHOOSER_ACTION_SAVE, name, NULL, file_answer_new (func, data, free_data));
#endif
}

typedef struct {
  BbCompatColourFunc func;
  GObject *data;
} ColourAnswer;

static ColourAnswer *
colour_answer_new (BbCompatColourFunc  func,
                   GObject            *data)
{
  ColourAnswer *answer = g_new0 (ColourAnswer, 1);

  answer->func = func;
  answer->data = g_object_ref (data);

  return answer;
}

static void
colour_answer_free (ColourAnswer *answer)
{
  g_object_unref (answer->data);
  g_free (answer);
}

#if GTK_CHECK_VERSION (4, 10, 0)

static void
colour_chosen_cb (GObject      *source,
                  GAsyncResult *result,
                  gpointer      data)
{
  ColourAnswer *answer = data;
  GdkRGBA *colour = gtk_color_dialog_choose_rgba_finish (GTK_COLOR_DIALOG (source), result, NULL);

  if (colour != NULL)
    answer->func (colour, answer->data);
  g_clear_pointer (&colour, gdk_rgba_free);
  colour_answer_free (answer);
}

#else

static void
colour_response_cb (GtkDialog    *dialog,
                    int           response,
                    ColourAnswer *answer)
{
  GdkRGBA colour;

  if (response == GTK_RESPONSE_OK)
    {
      gtk_color_chooser_get_rgba (GTK_COLOR_CHOOSER (dialog), &colour);
      answer->func (&colour, answer->data);
    }
  colour_answer_free (answer);
  gtk_window_destroy (GTK_WINDOW (dialog));
}

#endif

/**
 * bb_compat_choose_colour:
 * @parent: the window that asks
 * @title: what is asked for, translated
 * @colour: the colour that is chosen at first
 * @func: called with the colour, if one is chosen
 * @data: for @func, kept until then
 */
void
bb_compat_choose_colour (GtkWindow          *parent,
                         const char         *title,
                         const GdkRGBA      *colour,
                         BbCompatColourFunc  func,
                         GObject            *data)
{
#if GTK_CHECK_VERSION (4, 10, 0)
  g_autoptr (GtkColorDialog) dialog = gtk_color_dialog_new ();

  gtk_color_dialog_set_title (dialog, title);
  gtk_color_dialog_set_with_alpha (dialog, FALSE);
  gtk_color_dialog_choose_rgba (dialog, parent, colour, NULL, colour_chosen_cb, colour_answer_new (func, data));
#else
  GtkWidget *dialog = gtk_color_chooser_dialog_new (title, parent);

  gtk_window_set_modal (GTK_WINDOW (dialog), TRUE);
  gtk_color_chooser_set_use_alpha (GTK_COLOR_CHOOSER (dialog), FALSE);
  gtk_color_chooser_set_rgba (GTK_COLOR_CHOOSER (dialog), colour);
  g_object_set (dialog, "show-editor", TRUE, NULL);
  g_signal_connect (dialog, "response", G_CALLBACK (colour_response_cb), colour_answer_new (func, data));
  gtk_window_present (GTK_WINDOW (dialog));
#endif
}

/**
 * bb_compat_show_about:
 * @parent: the window that asks
 * @icon: name of the program's icon
 * @name: the program's name
 * @version: its version
 * @comments: what it is, translated
 */
void
bb_compat_show_about (GtkWindow  *parent,
                      const char *icon,
                      const char *name,
                      const char *version,
                      const char *comments)
{
#if ADW_CHECK_VERSION (1, 5, 0)
  AdwDialog *dialog = adw_about_dialog_new ();

  g_object_set (dialog, "application-icon", icon, "application-name", name, "version", version, "comments", comments,
                "license-type", GTK_LICENSE_GPL_3_0, NULL);
  adw_dialog_present (dialog, GTK_WIDGET (parent));
#else
  GtkWidget *window = adw_about_window_new ();

  g_object_set (window, "application-icon", icon, "application-name", name, "version", version, "comments", comments,
                "license-type", GTK_LICENSE_GPL_3_0, "transient-for", parent, "modal", TRUE, NULL);
  gtk_window_present (GTK_WINDOW (window));
#endif
}
