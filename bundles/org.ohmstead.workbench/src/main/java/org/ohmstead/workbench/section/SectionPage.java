// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.section;

import java.util.List;
import org.eclipse.swt.widgets.Composite;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.session.ProjectDesk;

/**
 * A page of the project: a branch of the navigator and the form that opens from it. The workbench brings the pages of the
 * amplifier, the bench and so on; a bundle adds another by registering this as an OSGi service. A page that throws is shown
 * as a failed page with the sentence of its exception and never stops the others.
 *
 * <p>An instance has no state of its own; everything that changes lies in the session and in the control that it makes.
 */
public interface SectionPage {
    /** Returns the page's name for machines, unique among the pages: lower-case words with dots, such as {@code acme.cooling}. */
    String id();

    /** Returns what the user calls it, such as "Parts stock". */
    String name();

    /** Returns where it stands among the pages: the built-in ones are at 100, 200, … 600; lower comes first. */
    int order();

    /** Returns the name of the page's icon among the workbench's icons, such as "amplifier"; "section" serves any page. */
    String iconName();

    /** Returns a few words on what the project holds of it, such as "6 ratings"; shown beside the name, may be empty. */
    String summary(Project project);

    /** Returns the entries below the section in the navigator, in the order of the project; may be empty. */
    List<SectionItem> items(Project project);

    /**
     * Returns the part of the project that the page is about, as a JSON path such as {@code $.amplifier}. A problem opens the page whose
     * path is the longest beginning of the problem's place.
     */
    String where();

    /**
     * Makes the page's widgets. They listen to the desk until they are disposed.
     *
     * @param parent what to put the page's control into
     * @param desk where the open project is, and where its changes are heard of
     */
    SectionControl create(Composite parent, ProjectDesk desk);
}
