// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import org.ohmstead.workbench.section.SectionPage;

/** A node of the navigator's tree. Nodes are equal when they stand for the same thing, whatever it looks like now. */
sealed interface NavigatorNode {
    /** The project itself. */
    record Title() implements NavigatorNode {}

    /**
     * A page of it.
     *
     * @param page which
     */
    record Section(SectionPage page) implements NavigatorNode {}

    /**
     * An entry of a page.
     *
     * @param page of which
     * @param index its place among the page's entries, from 0
     */
    record Item(SectionPage page, int index) implements NavigatorNode {}
}
