// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.viewers.ColumnViewerToolTipSupport;
import org.eclipse.jface.viewers.DelegatingStyledCellLabelProvider;
import org.eclipse.jface.viewers.DoubleClickEvent;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.StackLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Link;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** The open project as a tree of its pages and their entries, each with what is wrong in it. */
public final class NavigatorComposite extends Composite implements DeskListener {
    private static final int TEXT_WIDTH = 160;

    private final ProjectDesk desk;
    private final NavigatorActions actions;
    private final NavigatorTree content;
    private final TreeViewer viewer;
    private final Composite empty;

    /**
     * Makes the view.
     *
     * @param parent what it lies in
     * @param desk whose project it shows
     * @param pages of the project
     * @param actions opens pages and projects
     */
    public NavigatorComposite(Composite parent, ProjectDesk desk, SectionPages pages, NavigatorActions actions) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.actions = actions;
        setLayout(new StackLayout());
        content = new NavigatorTree(pages);
        viewer = new TreeViewer(this, SWT.SINGLE | SWT.V_SCROLL | SWT.H_SCROLL);
        Ids.name(viewer.getTree(), "navigator.tree");
        viewer.setUseHashlookup(true);
        viewer.setContentProvider(content);
        viewer.setLabelProvider(new DelegatingStyledCellLabelProvider(new NavigatorLabels(content, viewer.getTree())));
        ColumnViewerToolTipSupport.enableFor(viewer);
        viewer.addDoubleClickListener(this::opened);
        empty = makeEmpty();
        Registration registration = desk.listen(this);
        addListener(SWT.Dispose, event -> registration.close());
        showAll();
        viewer.expandToLevel(2);
    }

    private Composite makeEmpty() {
        Composite note = Ids.name(new Composite(this, SWT.NONE), "navigator.empty");
        Spacing.page(1).applyTo(note);
        line(note, Texts.text("navigator.none"));
        Link demo = Ids.name(new Link(note, SWT.NONE), "navigator.demo");
        demo.setText(Texts.text("navigator.demo"));
        demo.addListener(SWT.Selection, event -> actions.openDemo());
        Link open = Ids.name(new Link(note, SWT.NONE), "navigator.open");
        open.setText(Texts.text("navigator.open"));
        open.addListener(SWT.Selection, event -> actions.openProject());
        Label hint = line(note, Texts.text("navigator.hint"));
        hint.setForeground(Tones.of(note).mutedText());
        return note;
    }

    private static Label line(Composite parent, String text) {
        Label label = new Label(parent, SWT.WRAP);
        label.setText(text);
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(TEXT_WIDTH, SWT.DEFAULT)
                .applyTo(label);
        return label;
    }

    @Override
    public void sessionChanged(Optional<ProjectSession> session) {
        viewer.setInput(null);
        showAll();
        viewer.expandToLevel(2);
    }

    @Override
    public void projectChanged(Project before, Project after) {
        showAll();
    }

    @Override
    public void displayChanged(DisplaySettings settings) {
        showAll();
    }

    @Override
    public void problemsChanged(List<Problem> problems) {
        showAll();
    }

    @Override
    public boolean setFocus() {
        return desk.session().isPresent() ? viewer.getTree().setFocus() : empty.setFocus();
    }

    /** Selects the entry of a place, or the page that shows it; does nothing when no page does. */
    public void select(String where) {
        content.find(where).ifPresent(node -> viewer.setSelection(new StructuredSelection(node), true));
    }

    private void showAll() {
        Optional<Project> project = desk.session().map(ProjectSession::project);
        content.show(project, desk.problems());
        ((StackLayout) getLayout()).topControl = project.isPresent() ? viewer.getTree() : empty;
        if (project.isEmpty()) {
            viewer.setInput(null);
        } else if (viewer.getInput() == null) {
            viewer.setInput(content);
        } else {
            viewer.refresh();
        }
        layout();
    }

    private void opened(DoubleClickEvent event) {
        Object first = ((IStructuredSelection) event.getSelection()).getFirstElement();
        if (first instanceof NavigatorNode.Section section) {
            actions.open(section.page(), Optional.empty());
        } else if (first instanceof NavigatorNode.Item item) {
            content.item(item).ifPresent(found -> actions.open(item.page(), Optional.of(found.where())));
        } else if (first instanceof NavigatorNode.Title) {
            viewer.setExpandedState(first, !viewer.getExpandedState(first));
        }
    }
}
