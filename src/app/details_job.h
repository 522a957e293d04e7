/* details_job.h - the job: when, where, for whom, what the place is asked for, whom to call
 *
 * SPDX-License-Identifier: GPL-3.0-or-later
 */

#pragma once

#include <gtk/gtk.h>

#include "document.h"

#define LR_TYPE_DETAILS_JOB (lr_details_job_get_type ())
G_DECLARE_FINAL_TYPE (LrDetailsJob, lr_details_job, LR, DETAILS_JOB, GtkWidget)

void lr_details_job_set_document (LrDetailsJob *self, LrDocument *document);
/* The plan shown is another */
void lr_details_job_update       (LrDetailsJob *self);
