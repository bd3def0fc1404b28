// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.ui.internal;

import java.util.Optional;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.curves.CurveGroup;

/** A tab that shows something of a joint study. */
interface StudyPart {
    /**
     * What is in view.
     *
     * @param curves all that was found
     * @param group the curves in the chart, if any
     * @param study the study that they are part of
     * @param whyNothing what to do so that there is a study
     * @param comparison what is laid over
     */
    record InView(
            PowerCurves curves,
            Optional<CurveGroup> group,
            Optional<JointStudy> study,
            String whyNothing,
            Comparison comparison) {
        static final InView NOTHING =
                new InView(PowerCurves.NOTHING, Optional.empty(), Optional.empty(), "", Comparison.NONE);
    }

    /** Returns what stands on the tab. */
    String title();

    /** Returns what the tab holds. */
    Control control();

    /** Shows something else, or the same with other decimal signs. */
    void show(InView view);
}
