// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jface.viewers.ITreeContentProvider;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.workbench.section.SectionItem;
import org.ohmstead.workbench.section.SectionPage;

/** What the navigator's tree holds: title, pages, entries, and the problems of each. */
final class NavigatorTree implements ITreeContentProvider {
    private static final NavigatorNode.Title TITLE = new NavigatorNode.Title();

    private final SectionPages pages;
    private final Map<SectionPage, List<SectionItem>> items = new HashMap<>();
    private final Map<SectionPage, String> summaries = new HashMap<>();
    private Optional<Project> project = Optional.empty();
    private List<Problem> problems = List.of();

    NavigatorTree(SectionPages pages) {
        this.pages = pages;
    }

    /** Takes a project and its problems in. */
    void show(Optional<Project> newProject, List<Problem> newProblems) {
        project = newProject;
        problems = List.copyOf(newProblems);
        for (SectionPage page : pages.all()) {
            items.put(page, newProject.map(page::items).orElse(List.of()));
            summaries.put(page, newProject.map(page::summary).orElse(""));
        }
    }

    String title() {
        return project.map(Project::title).orElse("");
    }

    String summary(SectionPage page) {
        return summaries.getOrDefault(page, "");
    }

    Optional<SectionItem> item(NavigatorNode.Item node) {
        List<SectionItem> all = items.getOrDefault(node.page(), List.of());
        return node.index() < all.size() ? Optional.of(all.get(node.index())) : Optional.empty();
    }

    /** Returns the problems of what a node stands for; those of a page are all that it shows. */
    List<Problem> problems(NavigatorNode node) {
        if (node instanceof NavigatorNode.Section section) {
            return problems.stream()
                    .filter(problem -> pages.pageFor(problem.where()).equals(Optional.of(section.page())))
                    .toList();
        } else if (node instanceof NavigatorNode.Item item) {
            String where = item(item).map(SectionItem::where).orElse("");
            return where.isEmpty()
                    ? List.of()
                    : problems.stream()
                            .filter(problem -> SectionPages.within(problem.where(), where))
                            .toList();
        }
        return problems;
    }

    /** Returns the node of a place: its entry, or else its page. */
    Optional<NavigatorNode> find(String where) {
        for (SectionPage page : pages.all()) {
            List<SectionItem> all = items.getOrDefault(page, List.of());
            for (int index = 0; index < all.size(); index++) {
                if (SectionPages.within(where, all.get(index).where())) {
                    return Optional.of(new NavigatorNode.Item(page, index));
                }
            }
        }
        return pages.pageFor(where).map(NavigatorNode.Section::new);
    }

    @Override
    public Object[] getElements(Object input) {
        return new Object[] {TITLE};
    }

    @Override
    public Object[] getChildren(Object parent) {
        if (parent instanceof NavigatorNode.Title) {
            return pages.all().stream().map(NavigatorNode.Section::new).toArray();
        }
        List<NavigatorNode> children = new ArrayList<>();
        if (parent instanceof NavigatorNode.Section section) {
            int count = items.getOrDefault(section.page(), List.of()).size();
            for (int index = 0; index < count; index++) {
                children.add(new NavigatorNode.Item(section.page(), index));
            }
        }
        return children.toArray();
    }

    @Override
    public Object getParent(Object element) {
        if (element instanceof NavigatorNode.Item item) {
            return new NavigatorNode.Section(item.page());
        }
        return element instanceof NavigatorNode.Section ? TITLE : null;
    }

    @Override
    public boolean hasChildren(Object element) {
        return getChildren(element).length > 0;
    }
}
