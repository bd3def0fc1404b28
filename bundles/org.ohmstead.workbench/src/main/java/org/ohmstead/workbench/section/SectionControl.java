// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.section;

import org.eclipse.swt.widgets.Control;
import org.ohmstead.workbench.session.ProblemPlace;

/** What a {@link SectionPage} made: the widgets of the page, and how to get at a place in them. User interface thread only. */
public interface SectionControl {
    /** Returns the page's outermost control; disposing it ends the page. */
    Control control();

    /**
     * Shows a place and puts the keyboard there: the row, cell or field that a problem or a navigator entry is about.
     *
     * @param place where to go; a place that the page does not have (any more) is left alone
     */
    void reveal(ProblemPlace place);

    /** Puts the keyboard where the work on the page usually begins. */
    void setFocus();
}
