/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "board-tool.h"

#define THRESHOLD 1.3

static const FpToolManner plain = { FALSE, FALSE };

static FpToolHit
altar_in (int view)
{
  /* Far enough from the axis that nothing snaps to it. */
  return (FpToolHit) { .item = "altar", .view = view, .movable = TRUE, .scale = 50.0, .origin = { 4000.0, 2000.0 } };
}

static FpBoardTool
pressed (const FpToolHit *hit, gboolean pan)
{
  FpBoardTool tool;

  fp_board_tool_init (&tool, THRESHOLD);
  g_assert_cmpint (fp_board_tool_press (&tool, (FpPoint) { 100.0, 100.0 }, hit, pan).deed, ==, FP_TOOL_NOTHING);
  return tool;
}

/* Taken hold of, past the threshold. */
static FpBoardTool
moving (const FpToolHit *hit)
{
  FpBoardTool tool = pressed (hit, FALSE);
  FpToolAnswer answer = fp_board_tool_motion (&tool, (FpPoint) { 102.0, 100.0 }, plain);

  g_assert_cmpint (answer.deed, ==, FP_TOOL_BEGIN);
  g_assert_cmpstr (answer.item, ==, "altar");
  return tool;
}

static void
test_click_chooses (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = pressed (&hit, FALSE);
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
  FpBoardTool tool = pressed (&hit, FALSE);
  FpToolAnswer answer = fp_board_tool_release (&tool, (FpPoint) { 100.0, 100.0 });

  g_assert_cmpint (answer.deed, ==, FP_TOOL_CHOOSE);
  g_assert_null (answer.item);
}

static void
test_click_on_dimension_types_over (void)
{
  FpToolHit hit = { .item = "altar", .param = "length", .view = FP_VIEW_ELEVATION, .scale = 50.0 };
  FpBoardTool tool = pressed (&hit, FALSE);
  FpToolAnswer answer = fp_board_tool_release (&tool, (FpPoint) { 100.0, 100.0 });

  g_assert_cmpint (answer.deed, ==, FP_TOOL_TYPE_OVER);
  g_assert_cmpstr (answer.item, ==, "altar");
  g_assert_cmpstr (answer.param, ==, "length");
}

/* 10 mm of paper at 1:50 are 500 mm; each view moves only what it shows. */
static void
test_travel_by_view (void)
{
  const FpPoint moved = { 10.0, -4.0 };
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpVec3 by = fp_board_tool_travel (&hit, moved, plain);

  g_assert_cmpfloat (by.x, ==, 500.0);
  g_assert_cmpfloat (by.y, ==, -200.0);
  hit.view = FP_VIEW_ELEVATION;
  by = fp_board_tool_travel (&hit, moved, plain);
  g_assert_cmpfloat (by.x, ==, 500.0);
  g_assert_cmpfloat (by.y, ==, 0.0);
  /* In the section, seen from the Gospel side, east lies to the left. */
  hit.view = FP_VIEW_SECTION;
  by = fp_board_tool_travel (&hit, moved, plain);
  g_assert_cmpfloat (by.x, ==, 0.0);
  g_assert_cmpfloat (by.y, ==, -500.0);
  g_assert_cmpfloat (by.z, ==, 0.0);
}

static void
test_travel_is_rounded (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpVec3 by = fp_board_tool_travel (&hit, (FpPoint) { 0.27, 0.33 }, plain); /* 13.5 and 16.5 mm */

  g_assert_cmpfloat (by.x, ==, 10.0);
  g_assert_cmpfloat (by.y, ==, 20.0);
  by = fp_board_tool_travel (&hit, (FpPoint) { 0.272, 0.33 }, (FpToolManner) { .fine = TRUE }); /* 13.6 and 16.5 mm */
  g_assert_cmpfloat (by.x, ==, 14.0);
  g_assert_cmpfloat (by.y, ==, 17.0);
}

static void
test_travel_straight (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpVec3 by = fp_board_tool_travel (&hit, (FpPoint) { 2.0, -9.0 }, (FpToolManner) { .straight = TRUE });

  g_assert_cmpfloat (by.x, ==, 0.0);
  g_assert_cmpfloat (by.y, ==, -450.0);
}

static void
test_snaps_to_axis (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpVec3 by;

  hit.origin.x = -483.0;
  /* 9 mm of paper are 450 mm: within 1.5 mm of paper (75 mm) of the axis. */
  by = fp_board_tool_travel (&hit, (FpPoint) { 9.0, 0.0 }, plain);
  g_assert_cmpfloat (by.x, ==, 483.0);
  /* Past it again, and finely not at all. */
  by = fp_board_tool_travel (&hit, (FpPoint) { 14.0, 0.0 }, plain);
  g_assert_cmpfloat (by.x, ==, 700.0);
  by = fp_board_tool_travel (&hit, (FpPoint) { 9.0, 0.0 }, (FpToolManner) { .fine = TRUE });
  g_assert_cmpfloat (by.x, ==, 450.0);
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
  FpBoardTool tool = pressed (&paper, FALSE);
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
  tool = pressed (&hit, FALSE);
  g_assert_cmpint (fp_board_tool_motion (&tool, (FpPoint) { 105.0, 100.0 }, plain).deed, ==, FP_TOOL_PAN);
}

static void
test_middle_button_pans_over_things (void)
{
  FpToolHit hit = altar_in (FP_VIEW_PLAN);
  FpBoardTool tool = pressed (&hit, TRUE);
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

  g_assert_cmpint (fp_board_tool_press (&tool, (FpPoint) { 0.0, 0.0 }, &hit, FALSE).deed, ==, FP_TOOL_PUT_BACK);
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
  g_test_add_func ("/board-tool/travel/rounded", test_travel_is_rounded);
  g_test_add_func ("/board-tool/travel/straight", test_travel_straight);
  g_test_add_func ("/board-tool/travel/axis", test_snaps_to_axis);
  g_test_add_func ("/board-tool/move", test_a_move);
  g_test_add_func ("/board-tool/escape", test_escape_puts_back);
  g_test_add_func ("/board-tool/pan/paper", test_paper_pans);
  g_test_add_func ("/board-tool/pan/not-movable", test_what_is_not_movable_pans);
  g_test_add_func ("/board-tool/pan/middle", test_middle_button_pans_over_things);
  g_test_add_func ("/board-tool/press-while-moving", test_press_while_moving);
  g_test_add_func ("/board-tool/idle", test_motion_when_idle);
  return g_test_run ();
}
