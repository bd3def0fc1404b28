// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.internal.section;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ohmstead.workbench.section.SectionPage;

/** The pages of a project: those of the workbench and those that other bundles bring, in their order. */
public final class SectionPages {
    private static final String TITLE = "$.title";

    private final List<SectionPage> all;

    /**
     * Puts the pages in their order. Of two pages with the same id the first stays; the workbench's own come first.
     *
     * @param others the pages that other bundles bring
     */
    public SectionPages(Collection<? extends SectionPage> others) {
        List<SectionPage> entries = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        List<SectionPage> pages = new ArrayList<>(builtIn());
        pages.addAll(others);
        for (SectionPage page : pages) {
            SectionPage entry = new GuardedPage(page);
            if (ids.add(entry.id())) {
                entries.add(entry);
            }
        }
        entries.sort(Comparator.comparingInt(SectionPage::order));
        all = List.copyOf(entries);
    }

    private static List<SectionPage> builtIn() {
        return List.of(
                new AmplifierPage(),
                new BenchPage(),
                new PartsPage(),
                new LoadsPage(),
                new PlanPage(),
                new SheetPage(),
                new CheckStandardsPage(),
                new SharedLogPage());
    }

    /** Returns all pages in their order. */
    public List<SectionPage> all() {
        return all;
    }

    /** Returns the page with an id, or empty. */
    public Optional<SectionPage> page(String id) {
        return all.stream().filter(entry -> entry.id().equals(id)).findFirst();
    }

    /**
     * Returns the page that shows a place of the project: the one whose own path is the longest beginning of it. Empty when there is
     * none: a problem may be about another file.
     *
     * @param where a JSON path into the project, such as {@code $.amplifier.ratings[0].powerWatts}
     */
    public Optional<SectionPage> pageFor(String where) {
        if (where.equals(TITLE)) {
            return page("sheet");
        }
        return all.stream()
                .filter(page -> within(where, page.where()))
                .max(Comparator.comparingInt((SectionPage page) -> page.where().length())
                        .thenComparing(Comparator.comparingInt(all::indexOf).reversed()));
    }

    /** Returns whether a place is a path of the project or within it. */
    static boolean within(String where, String path) {
        String rest = where.startsWith(path) ? where.substring(path.length()) : "no";
        return !path.isEmpty() && (rest.isEmpty() || rest.startsWith(".") || rest.startsWith("["));
    }
}
