// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.Optional;
import org.ohmstead.workbench.section.SectionPage;

/** What the project navigator has done by others. */
public interface NavigatorActions {
    /**
     * Opens a page.
     *
     * @param page which
     * @param where JSON path to go to on it, or empty for the page as a whole
     */
    void open(SectionPage page, Optional<String> where);

    /** Opens the demo project; asked for from the empty navigator. */
    void openDemo();

    /** Lets the user choose a project to open; asked for from the empty navigator. */
    void openProject();
}
