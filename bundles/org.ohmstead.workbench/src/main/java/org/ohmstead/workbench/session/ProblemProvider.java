// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.List;
import org.ohmstead.model.Problem;

/**
 * Finds problems of the open project, or of the program itself; a plug-in offers it as an OSGi service. It is asked in the background
 * after each change. One that fails or takes too long harms no other: it is shown as a problem itself.
 */
public interface ProblemProvider {
    /** Returns what the provider is called when it has to be named to the user. */
    default String name() {
        return getClass().getSimpleName();
    }

    /**
     * Returns what is wrong, empty when nothing is. Never called on the user interface's thread, and never by two threads at once.
     *
     * @param view the project as it is at one moment
     */
    List<Problem> problems(ProjectView view);

    /**
     * Returns what is wrong while no project is open: nothing, unless the provider looks at more than projects. Never called on the user
     * interface's thread, and never by two threads at once.
     */
    default List<Problem> problemsWithoutProject() {
        return List.of();
    }
}
