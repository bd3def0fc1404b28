// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.app.internal.help;

import java.util.List;
import java.util.function.Consumer;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.eclipse.jface.viewers.LabelProvider;
import org.eclipse.jface.viewers.StructuredSelection;
import org.eclipse.jface.viewers.TreeViewer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.TreeItem;
import org.ohmstead.app.internal.welcome.Pictures;
import org.ohmstead.workbench.look.Ids;

/** The help's contents as a tree. */
final class HelpContents {
    private final TreeViewer viewer;
    private HelpLibrary library;
    private boolean following;

    /**
     * Makes an empty tree.
     *
     * @param choose called with the address of the page that the user chooses
     */
    HelpContents(Composite parent, Consumer<String> choose) {
        viewer = new TreeViewer(parent, SWT.SINGLE | SWT.V_SCROLL | SWT.H_SCROLL);
        Ids.name(viewer.getTree(), "help.contents");
        viewer.setContentProvider(new Topics());
        viewer.setLabelProvider(new Labels());
        viewer.addSelectionChangedListener(event -> {
            if (!following
                    && event.getStructuredSelection().getFirstElement() instanceof HelpTopic topic
                    && !topic.href().isEmpty()) {
                choose.accept(topic.href());
            }
        });
        viewer.addDoubleClickListener(event -> {
            Object topic = event.getViewer().getSelection() instanceof StructuredSelection chosen
                    ? chosen.getFirstElement()
                    : null;
            viewer.setExpandedState(topic, !viewer.getExpandedState(topic));
        });
    }

    /** Fills the tree. */
    void show(HelpLibrary newLibrary) {
        library = newLibrary;
        viewer.setInput(library);
        viewer.expandAll();
    }

    /** Marks the page that is shown, without choosing it; marks nothing when it is not in the contents. */
    void mark(String href) {
        following = true;
        HelpTopic topic = library == null ? null : find(library.contents(), href);
        viewer.setSelection(topic == null ? StructuredSelection.EMPTY : new StructuredSelection(topic), true);
        if (topic != null && viewer.getTree().getSelectionCount() > 0) {
            showWithHeading(viewer.getTree().getSelection()[0]);
        }
        following = false;
    }

    /** The first page of a part would otherwise be shown at the top of the tree, with the part's name hidden above it. */
    private void showWithHeading(TreeItem item) {
        TreeItem part = item.getParentItem();
        if (part != null && part.indexOf(item) == 0) {
            viewer.getTree().showItem(part);
        }
        viewer.getTree().showItem(item);
    }

    private static HelpTopic find(List<HelpTopic> topics, String href) {
        for (HelpTopic topic : topics) {
            HelpTopic found = topic.href().equals(href) ? topic : find(topic.topics(), href);
            if (found != null) {
                return found;
            }
        }
        return null;
    }

    private static final class Topics implements ITreeContentProvider {
        @Override
        public Object[] getElements(Object input) {
            return ((HelpLibrary) input).contents().toArray();
        }

        @Override
        public Object[] getChildren(Object topic) {
            return ((HelpTopic) topic).topics().toArray();
        }

        @Override
        public Object getParent(Object topic) {
            return null;
        }

        @Override
        public boolean hasChildren(Object topic) {
            return !((HelpTopic) topic).topics().isEmpty();
        }
    }

    private static final class Labels extends LabelProvider {
        @Override
        public String getText(Object topic) {
            return ((HelpTopic) topic).title();
        }

        @Override
        public Image getImage(Object topic) {
            return ((HelpTopic) topic).href().isEmpty() ? null : Pictures.icon("sheet");
        }
    }
}
