// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;

/** What ties a part of a page to a part of the project. */
interface Binding {
    /** Shows the project as it is now. */
    void showProject(Project project);

    /** Shows the same project anew after the way in which numbers are shown has changed. */
    default void showDisplay(Project project) {
        showProject(project);
    }

    /**
     * Shows those of the problems that are about this part.
     *
     * @param problems all of the project
     */
    default void showProblems(List<Problem> problems) {}

    /**
     * Puts the keyboard to a place when it is in this part.
     *
     * @param place where to
     * @return whether it is
     */
    default boolean reveal(ProjectPath place) {
        return false;
    }

    /**
     * Lets the user change it or not.
     *
     * @param readOnly whether it can only be looked at
     */
    default void setReadOnly(boolean readOnly) {}
}
