/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "footpace/order.h"

G_BEGIN_DECLS

struct _FpOrder
{
  const FpScene  *scene;
  FpOrderSpec     spec;
  const FpPlaced *altar;  /* of celebration; NULL                            */
  GArray         *lights; /* (element-type FpOrderLight)                     */
  gboolean        genuflects;
};

G_END_DECLS
