/* test-document.c - history, preview, what is in hand, and the file
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#include "app-test.h"

#include "history.h"

typedef struct
{
  int   n_changed, n_hand, n_history, n_judged, n_message;
  char *message;
} Heard;

static void
changed_cb (Heard *heard)
{
  heard->n_changed++;
}

static void
hand_cb (Heard *heard)
{
  heard->n_hand++;
}

static void
history_cb (Heard *heard)
{
  heard->n_history++;
}

static void
judged_cb (Heard *heard)
{
  heard->n_judged++;
}

static void
message_cb (Heard      *heard,
            const char *sentence)
{
  heard->n_message++;
  g_free (heard->message);
  heard->message = g_strdup (sentence);
}

static void
listen (LrDocument *document,
        Heard      *heard)
{
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), heard);
  g_signal_connect_swapped (document, "hand", G_CALLBACK (hand_cb), heard);
  g_signal_connect_swapped (document, "history", G_CALLBACK (history_cb), heard);
  g_signal_connect_swapped (document, "judged", G_CALLBACK (judged_cb), heard);
  g_signal_connect_swapped (document, "message", G_CALLBACK (message_cb), heard);
}

static double
camera_x_m (LrDocument *document)
{
  return first_of (document, LR_ITEM_CAMERA)->at_m.x;
}

static void
test_new (void)
{
  g_autoptr (LrDocument) document = lr_document_new ();

  g_assert_nonnull (lr_document_get_plan (document));
  g_assert_nonnull (lr_document_get_study (document));
  g_assert_nonnull (lr_document_get_remarks (document));
  g_assert_false (lr_document_has_changes (document));
  g_assert_null (lr_document_get_path (document));
  g_assert_null (lr_document_get_undo_title (document));
  g_assert_null (lr_document_get_redo_title (document));
}

static void
test_undo (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id);
  double start_m = camera_x_m (document);
  Heard heard = { 0 };

  listen (document, &heard);
  lr_document_commit (document, moved (document, id, 0.25), "Move camera A");
  g_assert_cmpint (heard.n_changed, ==, 1);
  g_assert_cmpint (heard.n_history, ==, 1);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m + 0.25, 1e-9);
  g_assert_true (lr_document_get_study (document)->plan == lr_document_get_plan (document));
  g_assert_cmpstr (lr_document_get_undo_title (document), ==, "Move camera A");
  g_assert_true (lr_document_has_changes (document));

  lr_document_undo (document);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m, 1e-9);
  g_assert_cmpstr (lr_document_get_redo_title (document), ==, "Move camera A");
  g_assert_false (lr_document_has_changes (document));
  lr_document_undo (document);
  g_assert_cmpint (heard.n_changed, ==, 2);

  lr_document_redo (document);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m + 0.25, 1e-9);
  lr_document_redo (document);
  g_assert_cmpint (heard.n_changed, ==, 3);
}

/* Looking at another set-up is a step, but nothing to save */
static void
test_look (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *first = g_strdup (lr_plan_get_setup (lr_document_get_plan (document))->id);
  g_autoptr (GError) error = NULL;
  LrPlan *both;

  lr_document_commit (document, lr_plan_copy_setup (lr_document_get_plan (document), "as found", &error), "copy");
  g_assert_no_error (error);
  g_assert_true (lr_document_has_changes (document));
  both = lr_plan_ref (lr_document_get_plan (document));
  lr_document_reset (document, both, NULL);
  g_assert_false (lr_document_has_changes (document));

  lr_document_commit (document, lr_plan_show_setup (lr_document_get_plan (document), first, &error), "Show another set-up");
  g_assert_no_error (error);
  g_assert_cmpstr (lr_plan_get_setup (lr_document_get_plan (document))->id, ==, first);
  g_assert_cmpstr (lr_document_get_undo_title (document), ==, "Show another set-up");
  g_assert_false (lr_document_has_changes (document));
}

/* Straight light is of the plan shown at once; the room's share comes after a rest, from another thread */
static void
test_light (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_LIGHT)->id);

  g_assert_false (lr_light_levels_is_whole (lr_document_get_levels (document)));
  while (!lr_document_has_current_levels (document))
    g_main_context_iteration (NULL, TRUE);
  g_assert_true (lr_light_levels_is_settled (lr_document_get_levels (document)));

  lr_document_commit (document, moved (document, id, 0.1), "one");
  g_assert_false (lr_document_has_current_levels (document));
  g_assert_true (lr_light_levels_get_plan (lr_document_get_levels (document)) == lr_document_get_plan (document));
  g_assert_true (lr_light_levels_is_whole (lr_document_get_levels (document)));
  while (!lr_document_has_current_levels (document))
    g_main_context_iteration (NULL, TRUE);
}

/* A new step forgets what could be redone */
static void
test_branch (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id);

  lr_document_commit (document, moved (document, id, 0.1), "one");
  lr_document_commit (document, moved (document, id, 0.1), "two");
  lr_document_undo (document);
  lr_document_commit (document, moved (document, id, -0.3), "three");
  g_assert_null (lr_document_get_redo_title (document));
  g_assert_cmpstr (lr_document_get_undo_title (document), ==, "three");
  lr_document_undo (document);
  g_assert_cmpstr (lr_document_get_undo_title (document), ==, "one");
}

/* Nothing came of the edit: no step, and NULL is no plan */
static void
test_no_step (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id);
  Heard heard = { 0 };

  listen (document, &heard);
  lr_document_commit (document, moved (document, id, 0.0), "nothing");
  lr_document_commit (document, NULL, "nothing");
  lr_document_preview (document, NULL);
  lr_document_end_preview (document, TRUE, "nothing");
  g_assert_cmpint (heard.n_changed + heard.n_history, ==, 0);
  g_assert_null (lr_document_get_undo_title (document));
}

static void
test_merge (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id);
  double start_m = camera_x_m (document);

  for (int i = 0; i < 5; i++)
    lr_document_commit_merge (document, moved (document, id, 0.01), "nudge", "nudge camera-a");
  lr_document_commit_merge (document, moved (document, id, 0.01), "other", "nudge camera-b");
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m + 0.06, 1e-9);
  lr_document_undo (document);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m + 0.05, 1e-9);
  lr_document_undo (document);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m, 1e-9);
  g_assert_null (lr_document_get_undo_title (document));
}

/* Steps that are too far apart in time are not one */
static void
test_merge_time (void)
{
  LrHistory history;
  LrPlan *plan = lr_plan_new_empty (), *next = lr_plan_new_empty ();

  lr_history_init (&history, plan);
  lr_history_push (&history, lr_plan_ref (plan), "one", "key");
  g_usleep (2000);
  g_assert_false (lr_history_merge (&history, next, "key", 1000));
  g_assert_true (lr_history_merge (&history, next, "key", G_USEC_PER_SEC));
  g_assert_true (lr_history_get_plan (&history) == next);
  g_assert_true (lr_history_go (&history, -1));
  g_assert_false (lr_history_merge (&history, next, "key", G_USEC_PER_SEC));
  lr_history_clear (&history);
}

static void
test_preview (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id);
  double start_m = camera_x_m (document);
  Heard heard = { 0 };

  listen (document, &heard);
  for (int i = 1; i <= 10; i++)
    lr_document_preview (document, moved (document, id, 0.1 * i));
  g_assert_true (lr_document_has_preview (document));
  g_assert_cmpint (heard.n_changed, ==, 10);
  g_assert_cmpint (heard.n_history, ==, 0);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m + 1.0, 1e-9);
  g_assert_false (lr_document_has_changes (document));

  lr_document_end_preview (document, TRUE, "Move camera A");
  g_assert_false (lr_document_has_preview (document));
  g_assert_cmpint (heard.n_history, ==, 1);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m + 1.0, 1e-9);
  lr_document_undo (document);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m, 1e-9);
}

static void
test_preview_dropped (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id);
  double start_m = camera_x_m (document);

  lr_document_preview (document, moved (document, id, 0.5));
  lr_document_end_preview (document, FALSE, NULL);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m, 1e-9);
  g_assert_null (lr_document_get_undo_title (document));

  lr_document_commit (document, moved (document, id, 0.1), "step");
  lr_document_preview (document, moved (document, id, 0.5));
  lr_document_undo (document);
  g_assert_cmpfloat_with_epsilon (camera_x_m (document), start_m + 0.1, 1e-9);
}

/* What is in hand stays while it is there */
static void
test_selection (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id);
  g_autoptr (GError) error = NULL;
  Heard heard = { 0 };

  listen (document, &heard);
  lr_document_select (document, id);
  lr_document_select (document, id);
  g_assert_cmpint (heard.n_hand, ==, 1);
  lr_document_commit (document, moved (document, id, 0.1), "move");
  g_assert_cmpstr (lr_document_get_selected (document), ==, id);

  lr_document_point_at (document, id);
  lr_document_commit (document, lr_plan_remove (lr_document_get_plan (document), id, &error), "remove");
  g_assert_no_error (error);
  g_assert_null (lr_document_get_selected (document));
  g_assert_null (lr_document_get_pointed (document));

  lr_document_select (document, "nobody");
  g_assert_null (lr_document_get_selected (document));
}

static const LrRemark *
first_remedied (LrDocument *document)
{
  const LrRemarks *remarks = lr_document_get_remarks (document);

  for (guint i = 0; i < remarks->all->len; i++)
    if (((const LrRemark *) g_ptr_array_index (remarks->all, i))->remedy != NULL)
      return g_ptr_array_index (remarks->all, i);
  g_assert_not_reached ();
}

static guint
count_remedies (LrDocument *document)
{
  const LrRemarks *remarks = lr_document_get_remarks (document);
  guint n = 0;

  for (guint i = 0; i < remarks->all->len; i++)
    n += ((const LrRemark *) g_ptr_array_index (remarks->all, i))->remedy != NULL;
  return n;
}

/* While a preview moves nothing is offered; when it rests, and when it is kept or taken back, everything is */
static void
test_moving (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_FURNITURE)->id);
  guint n_still = count_remedies (document), n_fix = lr_document_get_remarks (document)->n[LR_GRADE_FIX];
  const LrStudy *study;
  Heard heard = { 0 };

  listen (document, &heard);
  g_assert_cmpuint (n_still, >, 0);
  lr_document_preview (document, moved (document, id, 0.001));
  g_assert_true (lr_document_get_remarks (document)->is_moving);
  g_assert_cmpuint (count_remedies (document), ==, 0);
  g_assert_cmpuint (lr_document_get_remarks (document)->n[LR_GRADE_FIX], ==, n_fix);

  g_assert_cmpint (heard.n_judged, ==, 0);
  while (lr_document_get_remarks (document)->is_moving)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpint (heard.n_judged, ==, 1);
  g_assert_cmpint (heard.n_changed, ==, 1);
  g_assert_cmpuint (count_remedies (document), ==, n_still);

  lr_document_preview (document, moved (document, id, 0.002));
  g_assert_cmpuint (count_remedies (document), ==, 0);
  study = lr_document_get_study (document);
  lr_document_end_preview (document, TRUE, "Move it");
  g_assert_false (lr_document_get_remarks (document)->is_moving);
  g_assert_cmpuint (count_remedies (document), ==, n_still);
  g_assert_true (lr_document_get_study (document) == study); /* it is of the same plan */
  g_assert_true (study->plan == lr_document_get_plan (document));
  while (!lr_document_has_current_levels (document))
    g_main_context_iteration (NULL, TRUE);

  lr_document_preview (document, moved (document, id, 0.003));
  lr_document_end_preview (document, FALSE, NULL);
  g_assert_cmpuint (count_remedies (document), >=, n_still); /* and what is told of light */
  g_assert_true (lr_document_get_study (document)->plan == lr_document_get_plan (document));
}

/* Whatever comes after a rest waits for a window's first frame, and then comes as after any rest */
static void
test_starting (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_LIGHT)->id);
  gint64 until_us;

  lr_document_set_starting (document, TRUE);
  lr_document_preview (document, moved (document, id, 0.1));
  until_us = g_get_monotonic_time () + 300 * 1000;
  while (g_get_monotonic_time () < until_us)
    {
      g_main_context_iteration (NULL, FALSE);
      g_assert_true (lr_document_get_remarks (document)->is_moving);
    }

  lr_document_set_starting (document, FALSE);
  until_us = g_get_monotonic_time () + 1500 * 1000; /* sooner than it would come by itself */
  while (lr_document_get_remarks (document)->is_moving)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpint (g_get_monotonic_time (), <, until_us);
}

/* A preview that rested is being lit already: kept, it is waited for no longer than that */
static void
test_kept_while_lit (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_LIGHT)->id);

  lr_document_preview (document, moved (document, id, 0.1));
  while (lr_document_get_remarks (document)->is_moving)
    g_main_context_iteration (NULL, TRUE);
  lr_document_end_preview (document, TRUE, "Move it");
  while (!lr_document_has_current_levels (document))
    g_main_context_iteration (NULL, TRUE);
  g_assert_true (lr_light_levels_get_plan (lr_document_get_levels (document)) == lr_document_get_committed (document));
}

/* A remark stays in hand by its key; its remedy is a ghost until it is applied, as one step */
static void
test_remark (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_LIGHT)->id);
  g_autofree char *key = g_strdup (first_remedied (document)->key);
  guint n_fix = lr_document_get_remarks (document)->n[LR_GRADE_FIX];
  g_autoptr (LrPlan) ghost = NULL;

  g_assert_null (lr_document_get_ghost (document));
  lr_document_take_remark (document, key);
  g_assert_cmpstr (lr_document_get_remark (document)->key, ==, key);
  lr_document_preview (document, moved (document, id, 0.01));
  g_assert_cmpstr (lr_document_get_remark (document)->key, ==, key);
  lr_document_end_preview (document, FALSE, NULL);

  ghost = lr_plan_ref (lr_document_get_ghost (document));
  g_assert_false (lr_plan_equal (ghost, lr_document_get_plan (document)));
  lr_document_mend (document, key);
  g_assert_true (lr_plan_equal (ghost, lr_document_get_plan (document)));
  g_assert_cmpuint (lr_document_get_remarks (document)->n[LR_GRADE_FIX], <, n_fix);
  g_assert_null (lr_document_get_remark (document)); /* it is there still, and fine */
  g_assert_nonnull (lr_remarks_find (lr_document_get_remarks (document), key));
  g_assert_nonnull (lr_document_get_undo_title (document));
  lr_document_undo (document);
  g_assert_cmpuint (lr_document_get_remarks (document)->n[LR_GRADE_FIX], ==, n_fix);
}

static void
test_units (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *key = g_strdup (first_remedied (document)->key);
  g_autofree char *metric = g_strdup (first_remedied (document)->text);
  Heard heard = { 0 };

  listen (document, &heard);
  lr_document_set_units (document, LR_UNITS_IMPERIAL);
  g_assert_cmpint (heard.n_changed, ==, 1);
  g_assert_cmpstr (lr_remarks_find (lr_document_get_remarks (document), key)->text, !=, metric);
}

static void
test_file (void)
{
  g_autoptr (LrDocument) document = new_example (), other = lr_document_new ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id), *folder = new_folder ();
  g_autofree char *path = g_build_filename (folder, "plan.lookroom", NULL);
  g_autoptr (GError) error = NULL;

  lr_document_commit (document, moved (document, id, 0.25), "move");
  g_assert_true (lr_document_save (document, path, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (lr_document_get_path (document), ==, path);
  g_assert_false (lr_document_has_changes (document));
  g_assert_false (lr_document_changed_on_disk (document));

  g_assert_true (lr_document_open (other, path, &error));
  g_assert_true (lr_plan_equal (lr_document_get_plan (other), lr_document_get_plan (document)));
  g_assert_null (lr_document_get_undo_title (other));

  lr_document_undo (document);
  g_assert_true (lr_document_has_changes (document));
  g_unlink (path);
  g_assert_false (lr_document_changed_on_disk (document));
  g_rmdir (folder);
}

/* A saved step is not changed by the next nudge: going back to it must find what the file holds */
static void
test_no_merge_into_saved (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *id = g_strdup (first_of (document, LR_ITEM_CAMERA)->id), *folder = new_folder ();
  g_autofree char *path = g_build_filename (folder, "plan.lookroom", NULL);

  lr_document_commit_merge (document, moved (document, id, 0.01), "nudge", "nudge");
  g_assert_true (lr_document_save (document, path, NULL));
  lr_document_commit_merge (document, moved (document, id, 0.01), "nudge", "nudge");
  g_assert_true (lr_document_has_changes (document));
  lr_document_undo (document);
  g_assert_false (lr_document_has_changes (document));
  g_unlink (path);
  g_rmdir (folder);
}

static void
test_changed_on_disk (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autofree char *folder = new_folder (), *path = g_build_filename (folder, "plan.lookroom", NULL);
  g_autoptr (LrPlan) empty = lr_plan_new_empty ();
  g_autoptr (GError) error = NULL;

  g_assert_true (lr_document_save (document, path, NULL));
  g_usleep (20000);
  g_assert_true (lr_plan_write (empty, path, &error));
  g_assert_true (lr_document_changed_on_disk (document));
  g_assert_true (lr_document_save (document, NULL, &error));
  g_assert_false (lr_document_changed_on_disk (document));
}

/* What cannot be read or written leaves everything as it is */
static void
test_errors (void)
{
  g_autoptr (LrDocument) document = new_example ();
  LrPlan *plan = lr_document_get_plan (document);
  g_autofree char *folder = new_folder (), *path = g_build_filename (folder, "bad.lookroom", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "no", "such", "folder", "plan.lookroom", NULL);
  g_autoptr (GError) error = NULL;
  Heard heard = { 0 };

  listen (document, &heard);
  g_assert_true (g_file_set_contents (path, "{ \"format\": ", -1, NULL));
  g_assert_false (lr_document_open (document, path, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_false (lr_document_save (document, nowhere, &error));
  g_assert_nonnull (error);
  g_assert_true (lr_document_get_plan (document) == plan);
  g_assert_null (lr_document_get_path (document));
  g_assert_cmpint (heard.n_changed + heard.n_history, ==, 0);
}

/* A plan of a newer version: looked at, not changed, and said so */
static void
test_read_only (void)
{
  g_autofree char *folder = new_folder (), *path = g_build_filename (folder, "newer.lookroom", NULL);
  g_autoptr (LrPlan) plan = read_example ();
  g_autoptr (GBytes) bytes = lr_plan_to_bytes (plan);
  g_autoptr (GString) text = g_string_new_len (g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes));
  g_autoptr (LrDocument) document = lr_document_new ();
  g_autoptr (GError) error = NULL;
  Heard heard = { 0 };

  g_assert_cmpuint (g_string_replace (text, "\"version\": 2", "\"version\": 3", 1), ==, 1);
  g_assert_true (g_file_set_contents (path, text->str, (gssize) text->len, NULL));
  g_assert_true (lr_document_open (document, path, &error));
  g_assert_no_error (error);
  g_assert_true (lr_document_get_plan (document)->is_read_only);

  listen (document, &heard);
  lr_document_commit (document, read_example (), "change");
  g_assert_cmpint (heard.n_changed, ==, 0);
  g_assert_cmpint (heard.n_message, ==, 1);
  g_assert_null (lr_document_get_undo_title (document));
  g_free (heard.message);
}

/* The set-up as planned is one plan as long as it does not change, whatever is done to the one as found */
static void
test_planned (void)
{
  g_autoptr (LrDocument) document = new_example ();
  g_autoptr (GError) error = NULL;
  LrPlan *planned;

  g_assert_null (lr_document_get_planned (document));
  lr_document_commit (document, lr_plan_copy_found (lr_document_get_committed (document), "As found", &error), "As found");
  planned = lr_document_get_planned (document);
  g_assert_nonnull (planned);
  g_assert_cmpuint (planned->shown, ==, 0);
  lr_document_preview (document, moved (document, "camera-b", 0.3));
  g_assert_true (lr_document_get_planned (document) == planned);
  lr_document_end_preview (document, FALSE, NULL);
  lr_document_undo (document);
  g_assert_null (lr_document_get_planned (document));
}

/* What is offered is the ghost while no remark is in hand, and over when the plan shown is another */
static void
test_offer (void)
{
  g_autoptr (LrDocument) document = new_example ();
  LrPlan *offer = moved (document, "camera-b", 0.3);
  const LrRemark *remark = g_ptr_array_index (lr_document_get_remarks (document)->all, 0);
  Heard heard = { 0 };

  listen (document, &heard);
  lr_document_offer (document, offer);
  g_assert_cmpint (heard.n_hand, ==, 1);
  g_assert_cmpint (heard.n_changed, ==, 0);
  g_assert_true (lr_document_get_ghost (document) == offer);
  lr_document_take_remark (document, remark->key);
  g_assert_true (lr_document_get_ghost (document) != offer);
  lr_document_take_remark (document, NULL);
  g_assert_true (lr_document_get_ghost (document) == offer);
  lr_document_commit (document, moved (document, "camera-b", 0.1), "Move camera B");
  g_assert_null (lr_document_get_ghost (document));
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/document/new", test_new);
  g_test_add_func ("/document/undo", test_undo);
  g_test_add_func ("/document/look", test_look);
  g_test_add_func ("/document/light", test_light);
  g_test_add_func ("/document/branch", test_branch);
  g_test_add_func ("/document/no-step", test_no_step);
  g_test_add_func ("/document/merge", test_merge);
  g_test_add_func ("/document/merge-time", test_merge_time);
  g_test_add_func ("/document/preview", test_preview);
  g_test_add_func ("/document/preview-dropped", test_preview_dropped);
  g_test_add_func ("/document/moving", test_moving);
  g_test_add_func ("/document/starting", test_starting);
  g_test_add_func ("/document/kept-while-lit", test_kept_while_lit);
  g_test_add_func ("/document/selection", test_selection);
  g_test_add_func ("/document/remark", test_remark);
  g_test_add_func ("/document/units", test_units);
  g_test_add_func ("/document/planned", test_planned);
  g_test_add_func ("/document/offer", test_offer);
  g_test_add_func ("/document/file", test_file);
  g_test_add_func ("/document/no-merge-into-saved", test_no_merge_into_saved);
  g_test_add_func ("/document/changed-on-disk", test_changed_on_disk);
  g_test_add_func ("/document/errors", test_errors);
  g_test_add_func ("/document/read-only", test_read_only);
  return g_test_run ();
}
