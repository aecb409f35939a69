/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "board-tool.h"

#include <math.h>

#define THRESHOLD 1.3

static const FpToolManner plain = { FALSE, FALSE };
static const FpToolPress left = { FALSE, FALSE, FALSE, FALSE }, middle = { .pan = TRUE };

static FpToolHit
altar_in (int view)
{
  return (FpToolHit) { .item = "altar", .view = view, .movable = TRUE, .scale = 50.0 };
}

static FpBoardTool
pressed (const FpToolHit *hit, FpToolPress how)
{
  FpBoardTool tool;

  fp_board_tool_init (&tool, THRESHOLD);
  g_assert_cmpint (fp_board_tool_press (&tool, (FpPoint) { 100.0, 100.0 }, hit, how).deed, ==, FP_TOOL_NOTHING);
  return tool;
}

/* Taken hold of, past the threshold. */
static FpBoardTool
moving (const FpToolHit *hit)
{
  FpBoardTool tool = pressed (hit, left);
  FpToolAnswer answer = fp_board_tool_motion (&tool, (FpPoint) { 102.0, 100.0 }, plain);

  g_assert_cmpint (answer.deed, ==, FP_TOOL_BEGIN);
  g_assert_cmpstr (answer.item, ==, "altar");
  return tool;
}

static void
test_click_chooses (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = pressed (&hit, left);
  FpToolAnswer answer;

  /* A hand that trembles still clicks. */
  g_assert_cmpint (fp_board_tool_motion (&tool, (FpPoint) { 101.0, 100.5 }, plain).deed, ==, FP_TOOL_NOTHING);
  answer = fp_board_tool_release (&tool, (FpPoint) { 101.0, 100.5 });
  g_assert_cmpint (answer.deed, ==, FP_TOOL_CHOOSE);
  g_assert_cmpstr (answer.item, ==, "altar");
  g_assert_cmpint (tool.state, ==, FP_TOOL_IDLE);
}

static void
test_click_on_paper_chooses_nothing (void)
{
  FpToolHit hit = { .view = -1 };
  FpBoardTool tool = pressed (&hit, left);
  FpToolAnswer answer = fp_board_tool_release (&tool, (FpPoint) { 100.0, 100.0 });

  g_assert_cmpint (answer.deed, ==, FP_TOOL_CHOOSE);
  g_assert_null (answer.item);
}

static void
test_click_on_dimension_types_over (void)
{
  FpToolHit hit = { .item = "altar", .param = "length", .view = FP_VIEW_ELEVATION, .scale = 50.0 };
  FpBoardTool tool = pressed (&hit, left);
  FpToolAnswer answer = fp_board_tool_release (&tool, (FpPoint) { 100.0, 100.0 });

  g_assert_cmpint (answer.deed, ==, FP_TOOL_TYPE_OVER);
  g_assert_cmpstr (answer.item, ==, "altar");
  g_assert_cmpstr (answer.param, ==, "length");
}

static FpVec3
travel (const FpToolHit *hit, FpPoint moved, FpToolManner manner)
{
  FpBoardTool tool = pressed (hit, left);

  return fp_board_tool_travel (&tool, moved, manner);
}

/* 10 mm of paper at 1:50 are 500 mm; each view moves only what it shows. */
static void
test_travel_by_view (void)
{
  const FpPoint moved = { 10.0, -4.0 };
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpVec3 by = travel (&hit, moved, plain);

  g_assert_cmpfloat (by.x, ==, 500.0);
  g_assert_cmpfloat (by.y, ==, -200.0);
  hit.view = FP_VIEW_ELEVATION;
  by = travel (&hit, moved, plain);
  g_assert_cmpfloat (by.x, ==, 500.0);
  g_assert_cmpfloat (by.y, ==, 0.0);
  /* In the section, seen from the Gospel side, east lies to the left. */
  hit.view = FP_VIEW_SECTION;
  by = travel (&hit, moved, plain);
  g_assert_cmpfloat (by.x, ==, 0.0);
  g_assert_cmpfloat (by.y, ==, -500.0);
  g_assert_cmpfloat (by.z, ==, 0.0);
}

/* Facing west the Epistle side is on the left; and a cutting line goes across itself only. */
static void
test_travel_turned_and_one_way (void)
{
  FpToolHit hit = altar_in (FP_VIEW_ELEVATION);
  FpVec3 by;

  hit.turned = TRUE;
  by = travel (&hit, (FpPoint) { 10.0, -4.0 }, plain);
  g_assert_cmpfloat (by.x, ==, -500.0);
  g_assert_cmpfloat (by.y, ==, 0.0);
  hit = altar_in (FP_VIEW_PLAN);
  for (hit.ways = 1; hit.ways <= 2; hit.ways++)
    {
      by = travel (&hit, (FpPoint) { 10.0, -4.0 }, plain);
      g_assert_cmpfloat (by.x, ==, hit.ways == 1 ? 500.0 : 0.0);
      g_assert_cmpfloat (by.y, ==, hit.ways == 2 ? -200.0 : 0.0);
    }
}

static void
test_travel_is_rounded (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpVec3 by = travel (&hit, (FpPoint) { 0.27, 0.33 }, plain); /* 13.5 and 16.5 mm */

  g_assert_cmpfloat (by.x, ==, 10.0);
  g_assert_cmpfloat (by.y, ==, 20.0);
  by = travel (&hit, (FpPoint) { 0.272, 0.33 }, (FpToolManner) { .fine = TRUE }); /* 13.6 and 16.5 mm */
  g_assert_cmpfloat (by.x, ==, 14.0);
  g_assert_cmpfloat (by.y, ==, 17.0);
}

static void
test_travel_straight (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpVec3 by = travel (&hit, (FpPoint) { 2.0, -9.0 }, (FpToolManner) { .straight = TRUE });

  g_assert_cmpfloat (by.x, ==, 0.0);
  g_assert_cmpfloat (by.y, ==, -450.0);
}

/* A catch at x = 483.25, within 75 mm. */
typedef struct { guint ways; gboolean held; } Caught;

static guint
catch_at (FpVec3 *by, guint ways, double scale, gpointer data)
{
  Caught *caught = data;

  g_assert_cmpfloat (scale, ==, 50.0);
  caught->ways = ways;
  caught->held = (ways & 1) != 0 && fabs (by->x - 483.25) < 75.0;
  if (caught->held)
    by->x = 483.25;
  return caught->held ? 1 : 0;
}

static void
test_travel_is_caught (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = pressed (&hit, left);
  Caught caught;
  FpVec3 by;

  fp_board_tool_catch_by (&tool, catch_at, &caught);
  /* 9 mm of paper are 450 mm: what is caught stays exactly there, the other way is rounded. */
  by = fp_board_tool_travel (&tool, (FpPoint) { 9.0, 0.33 }, plain);
  g_assert_cmpfloat (by.x, ==, 483.25);
  g_assert_cmpfloat (by.y, ==, 20.0);
  g_assert_cmpuint (caught.ways, ==, 3);
  /* Past it again, and finely not at all: what was caught is told to let go. */
  by = fp_board_tool_travel (&tool, (FpPoint) { 14.0, 0.0 }, plain);
  g_assert_cmpfloat (by.x, ==, 700.0);
  by = fp_board_tool_travel (&tool, (FpPoint) { 9.0, 0.0 }, (FpToolManner) { .fine = TRUE });
  g_assert_cmpfloat (by.x, ==, 450.0);
  g_assert_cmpuint (caught.ways, ==, 0);
  g_assert_false (caught.held);
  /* Along one axis only: the other does not catch it either. */
  by = fp_board_tool_travel (&tool, (FpPoint) { 9.0, 20.0 }, (FpToolManner) { .straight = TRUE });
  g_assert_cmpfloat (by.x, ==, 0.0);
  g_assert_cmpuint (caught.ways, ==, 2);
}

/* --- several at once ------------------------------------------------------- */

static void
test_click_chooses_also (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN), paper = { .view = -1 };
  FpBoardTool tool = pressed (&hit, (FpToolPress) { .also = TRUE });

  g_assert_cmpint (fp_board_tool_release (&tool, (FpPoint) { 100.0, 100.0 }).deed, ==, FP_TOOL_CHOOSE_ALSO);
  /* Nor is a dimension typed over then; and beside the things, what is chosen stays chosen. */
  hit.param = "length";
  tool = pressed (&hit, (FpToolPress) { .also = TRUE });
  g_assert_cmpint (fp_board_tool_release (&tool, (FpPoint) { 100.0, 100.0 }).deed, ==, FP_TOOL_CHOOSE_ALSO);
  tool = pressed (&paper, (FpToolPress) { .also = TRUE });
  g_assert_cmpint (fp_board_tool_release (&tool, (FpPoint) { 100.0, 100.0 }).deed, ==, FP_TOOL_NOTHING);
}

static void
test_a_frame (void)
{
  FpToolHit paper = { .view = -1 }, hit = altar_in (FP_VIEW_PLAN);
  const FpToolPress how = { .also = TRUE, .frame = TRUE, .add = TRUE };
  FpBoardTool tool = pressed (&paper, how);
  FpToolAnswer answer = fp_board_tool_motion (&tool, (FpPoint) { 90.0, 120.0 }, plain);

  g_assert_cmpint (answer.deed, ==, FP_TOOL_FRAME);
  g_assert_cmpfloat (answer.frame.x0, ==, 90.0);
  g_assert_cmpfloat (answer.frame.y1, ==, 120.0);
  fp_board_tool_motion (&tool, (FpPoint) { 130.0, 60.0 }, plain);
  answer = fp_board_tool_release (&tool, (FpPoint) { 130.0, 60.0 });
  g_assert_cmpint (answer.deed, ==, FP_TOOL_CHOOSE_WITHIN);
  g_assert_true (answer.also);
  g_assert_cmpfloat (answer.frame.x0, ==, 100.0);
  g_assert_cmpfloat (answer.frame.x1, ==, 130.0);
  g_assert_cmpfloat (answer.frame.y0, ==, 60.0);
  g_assert_cmpfloat (answer.frame.y1, ==, 100.0);
  /* Given up, and from a thing that can be moved there is none. */
  tool = pressed (&paper, how);
  fp_board_tool_motion (&tool, (FpPoint) { 90.0, 120.0 }, plain);
  g_assert_cmpint (fp_board_tool_cancel (&tool).deed, ==, FP_TOOL_DROP_FRAME);
  tool = pressed (&hit, how);
  g_assert_cmpint (fp_board_tool_motion (&tool, (FpPoint) { 90.0, 120.0 }, plain).deed, ==, FP_TOOL_BEGIN);
}

/* A handle is chosen by a click, before a dimension that lies there, and pulled by a drag. */
static void
test_a_handle (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool;
  FpToolAnswer answer;

  hit.handle = 3;
  hit.param = "length";
  tool = pressed (&hit, left);
  answer = fp_board_tool_release (&tool, (FpPoint) { 100.0, 100.0 });
  g_assert_cmpint (answer.deed, ==, FP_TOOL_CHOOSE_HANDLE);
  g_assert_cmpuint (answer.handle, ==, 3);
  tool = pressed (&hit, left);
  answer = fp_board_tool_motion (&tool, (FpPoint) { 104.0, 100.0 }, plain);
  g_assert_cmpint (answer.deed, ==, FP_TOOL_BEGIN);
  g_assert_cmpuint (answer.handle, ==, 3);
}

/* --- typed values ------------------------------------------------------------ */

static void
test_typed (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = moving (&hit);
  FpToolAnswer answer;

  g_assert_true (fp_board_tool_type (&tool));
  /* Now neither the hand nor its letting go means anything. */
  g_assert_cmpint (fp_board_tool_motion (&tool, (FpPoint) { 150.0, 100.0 }, plain).deed, ==, FP_TOOL_NOTHING);
  g_assert_cmpint (fp_board_tool_release (&tool, (FpPoint) { 150.0, 100.0 }).deed, ==, FP_TOOL_NOTHING);
  answer = fp_board_tool_typed (&tool, (FpVec3) { 451.5, 0.0, 0.0 });
  g_assert_cmpint (answer.deed, ==, FP_TOOL_MOVE);
  g_assert_cmpfloat (answer.by.x, ==, 451.5);
  answer = fp_board_tool_enter (&tool);
  g_assert_cmpint (answer.deed, ==, FP_TOOL_KEEP);
  g_assert_cmpfloat (answer.by.x, ==, 451.5);
  g_assert_cmpint (tool.state, ==, FP_TOOL_IDLE);
  g_assert_false (fp_board_tool_type (&tool));
  g_assert_cmpint (fp_board_tool_typed (&tool, (FpVec3) { 1.0, 0.0, 0.0 }).deed, ==, FP_TOOL_NOTHING);
}

static void
test_typed_is_put_back_or_entered (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = moving (&hit);

  fp_board_tool_type (&tool);
  g_assert_cmpint (fp_board_tool_cancel (&tool).deed, ==, FP_TOOL_PUT_BACK);
  g_assert_cmpint (tool.state, ==, FP_TOOL_IDLE);
  /* Going elsewhere enters what was typed. */
  tool = moving (&hit);
  fp_board_tool_type (&tool);
  fp_board_tool_typed (&tool, (FpVec3) { 0.0, 70.0, 0.0 });
  g_assert_cmpint (fp_board_tool_press (&tool, (FpPoint) { 0.0, 0.0 }, &hit, left).deed, ==, FP_TOOL_KEEP);
  g_assert_cmpint (tool.state, ==, FP_TOOL_PRESSED);
}

static void
test_a_move (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = moving (&hit);
  FpToolAnswer answer = fp_board_tool_motion (&tool, (FpPoint) { 104.0, 101.0 }, plain);

  g_assert_cmpint (answer.deed, ==, FP_TOOL_MOVE);
  g_assert_cmpfloat (answer.by.x, ==, 200.0);
  g_assert_cmpfloat (answer.by.y, ==, 50.0);
  /* No answer where nothing changes once rounded. */
  g_assert_cmpint (fp_board_tool_motion (&tool, (FpPoint) { 104.01, 101.0 }, plain).deed, ==, FP_TOOL_NOTHING);
  /* Back where it was: past the threshold, every motion counts. */
  answer = fp_board_tool_motion (&tool, (FpPoint) { 100.0, 100.0 }, plain);
  g_assert_cmpint (answer.deed, ==, FP_TOOL_MOVE);
  g_assert_cmpfloat (answer.by.x, ==, 0.0);
  fp_board_tool_motion (&tool, (FpPoint) { 110.0, 100.0 }, plain);
  answer = fp_board_tool_release (&tool, (FpPoint) { 110.0, 100.0 });
  g_assert_cmpint (answer.deed, ==, FP_TOOL_KEEP);
  g_assert_cmpstr (answer.item, ==, "altar");
  g_assert_cmpfloat (answer.by.x, ==, 500.0);
  g_assert_cmpint (tool.state, ==, FP_TOOL_IDLE);
}

static void
test_escape_puts_back (void)
{
  FpToolHit hit = altar_in (FP_VIEW_SECTION);
  FpBoardTool tool = moving (&hit);

  fp_board_tool_motion (&tool, (FpPoint) { 120.0, 100.0 }, plain);
  g_assert_cmpint (fp_board_tool_cancel (&tool).deed, ==, FP_TOOL_PUT_BACK);
  /* The button is still down: what follows means nothing. */
  g_assert_cmpint (fp_board_tool_motion (&tool, (FpPoint) { 130.0, 100.0 }, plain).deed, ==, FP_TOOL_NOTHING);
  g_assert_cmpint (fp_board_tool_cancel (&tool).deed, ==, FP_TOOL_NOTHING);
  g_assert_cmpint (fp_board_tool_release (&tool, (FpPoint) { 130.0, 100.0 }).deed, ==, FP_TOOL_NOTHING);
  g_assert_cmpint (tool.state, ==, FP_TOOL_IDLE);
}

static void
test_paper_pans (void)
{
  const FpToolHit paper = { .view = -1 };
  FpBoardTool tool = pressed (&paper, left);
  FpPoint sum = { 0.0, 0.0 };

  for (guint i = 1; i <= 10; i++)
    {
      FpToolAnswer answer = fp_board_tool_motion (&tool, (FpPoint) { 100.0 + i, 100.0 - 2.0 * i }, plain);

      sum.x += answer.pan.x;
      sum.y += answer.pan.y;
    }
  /* What was moved before the threshold is made up for: the paper stays under the pointer. */
  g_assert_cmpfloat_with_epsilon (sum.x, 10.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (sum.y, -20.0, 1e-9);
  g_assert_cmpint (fp_board_tool_release (&tool, (FpPoint) { 110.0, 80.0 }).deed, ==, FP_TOOL_NOTHING);
}

/* A floor that is not chosen lies under most of the paper: the paper is shifted, not the church. */
static void
test_what_is_not_movable_pans (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool;

  hit.movable = FALSE;
  tool = pressed (&hit, left);
  g_assert_cmpint (fp_board_tool_motion (&tool, (FpPoint) { 105.0, 100.0 }, plain).deed, ==, FP_TOOL_PAN);
}

static void
test_middle_button_pans_over_things (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = pressed (&hit, middle);
  FpToolAnswer answer = fp_board_tool_motion (&tool, (FpPoint) { 100.5, 100.0 }, plain);

  g_assert_cmpint (answer.deed, ==, FP_TOOL_PAN);
  g_assert_cmpfloat (answer.pan.x, ==, 0.5);
  g_assert_cmpint (fp_board_tool_release (&tool, (FpPoint) { 100.5, 100.0 }).deed, ==, FP_TOOL_NOTHING);
}

/* A release that never came (the grab was broken) must not leave a thing half moved. */
static void
test_press_while_moving (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = moving (&hit);

  g_assert_cmpint (fp_board_tool_press (&tool, (FpPoint) { 0.0, 0.0 }, &hit, left).deed, ==, FP_TOOL_PUT_BACK);
  g_assert_cmpint (tool.state, ==, FP_TOOL_PRESSED);
}

static void
test_motion_when_idle (void)
{
  FpBoardTool tool;

  fp_board_tool_init (&tool, THRESHOLD);
  g_assert_cmpint (fp_board_tool_motion (&tool, (FpPoint) { 50.0, 50.0 }, plain).deed, ==, FP_TOOL_NOTHING);
  g_assert_cmpint (fp_board_tool_cancel (&tool).deed, ==, FP_TOOL_NOTHING);
  g_assert_cmpint (fp_board_tool_release (&tool, (FpPoint) { 50.0, 50.0 }).deed, ==, FP_TOOL_NOTHING);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/board-tool/click/chooses", test_click_chooses);
  g_test_add_func ("/board-tool/click/paper", test_click_on_paper_chooses_nothing);
  g_test_add_func ("/board-tool/click/dimension", test_click_on_dimension_types_over);
  g_test_add_func ("/board-tool/travel/by-view", test_travel_by_view);
  g_test_add_func ("/board-tool/travel/turned", test_travel_turned_and_one_way);
  g_test_add_func ("/board-tool/travel/rounded", test_travel_is_rounded);
  g_test_add_func ("/board-tool/travel/straight", test_travel_straight);
  g_test_add_func ("/board-tool/travel/caught", test_travel_is_caught);
  g_test_add_func ("/board-tool/click/also", test_click_chooses_also);
  g_test_add_func ("/board-tool/frame", test_a_frame);
  g_test_add_func ("/board-tool/handle", test_a_handle);
  g_test_add_func ("/board-tool/typed", test_typed);
  g_test_add_func ("/board-tool/typed/ended", test_typed_is_put_back_or_entered);
  g_test_add_func ("/board-tool/move", test_a_move);
  g_test_add_func ("/board-tool/escape", test_escape_puts_back);
  g_test_add_func ("/board-tool/pan/paper", test_paper_pans);
  g_test_add_func ("/board-tool/pan/not-movable", test_what_is_not_movable_pans);
  g_test_add_func ("/board-tool/pan/middle", test_middle_button_pans_over_things);
  g_test_add_func ("/board-tool/press-while-moving", test_press_while_moving);
  g_test_add_func ("/board-tool/idle", test_motion_when_idle);
  return g_test_run ();
}
