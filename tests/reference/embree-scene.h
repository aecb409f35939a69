/* SPDX-License-Identifier: GPL-3.0-or-later */
/* embree-scene.h - the same solids, told to the ray-tracing kernels of Embree 3
 *
 * For tests and benchmarks.  Prisms and frusta become triangles, heads become
 * spheres of Embree's own, stretched.  Embree counts in single precision.
 */
#pragma once

#include "footpace/sight.h"

G_BEGIN_DECLS

typedef struct _EmbreeScene EmbreeScene;

/* @solids must outlive it. */
EmbreeScene *embree_scene_new  (const FpSolids *solids);
void         embree_scene_free (EmbreeScene *self);

/* Whether anything but solids of @skip_owner, and head and trunk of @skip_minister, lies between two points. */
gboolean     embree_scene_blocked (EmbreeScene *self, FpVec3 from, FpVec3 to, guint skip_owner, guint skip_minister);

#define EMBREE_PACKET 8

/* The same of up to EMBREE_PACKET rays from one eye in one packet; returns how many are blocked. */
guint        embree_scene_blocked_of (EmbreeScene *self, FpVec3 from, const FpVec3 *to, guint n, guint skip_owner,
                                      guint skip_minister);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmbreeScene, embree_scene_free)

G_END_DECLS
