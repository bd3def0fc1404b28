// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.curves.study;

import java.util.List;

/** What came of a study: a {@link PowerStudy}, or a refusal that says what to do. */
public sealed interface StudyOutcome permits PowerStudy, StudyOutcome.Refused {

    /** Returns the points that could not be used, each with the reason. */
    List<RefusedPoint> refused();

    /**
     * No study is possible.
     *
     * @param reason why, and what to do, in whole sentences
     * @param refused the points that could not be used
     */
    record Refused(String reason, List<RefusedPoint> refused) implements StudyOutcome {

        /** Copies the list. */
        public Refused {
            refused = List.copyOf(refused);
        }
    }
}
