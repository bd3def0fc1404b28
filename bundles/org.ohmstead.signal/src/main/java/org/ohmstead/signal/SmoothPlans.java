// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal;

import java.lang.ref.SoftReference;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;

/**
 * {@link SmoothTransform}s, kept for the next record of the same length. One is lent to one caller at a time. Those of long records hold
 * as much memory as a record, so they are given up when memory runs short.
 */
final class SmoothPlans {
    private static final int MOST_PLANS = 6;

    private final Deque<SoftReference<SmoothTransform>> idle = new ArrayDeque<>();

    /** Returns a plan for records of a length; it is to be given back. */
    SmoothTransform take(int size) {
        SmoothTransform kept = takeKept(size);
        return kept == null ? new SmoothTransform(size) : kept;
    }

    private synchronized SmoothTransform takeKept(int size) {
        for (Iterator<SoftReference<SmoothTransform>> each = idle.iterator(); each.hasNext(); ) {
            SmoothTransform plan = each.next().get();
            if (plan == null || plan.size() == size) {
                each.remove();
            }
            if (plan != null && plan.size() == size) {
                return plan;
            }
        }
        return null;
    }

    /** Keeps a plan for the next caller; the one unused for longest goes when there are too many. */
    synchronized void giveBack(SmoothTransform plan) {
        idle.addFirst(new SoftReference<>(plan));
        if (idle.size() > MOST_PLANS) {
            idle.removeLast();
        }
    }

    /** Number of plans kept at present. */
    synchronized int size() {
        return idle.size();
    }
}
