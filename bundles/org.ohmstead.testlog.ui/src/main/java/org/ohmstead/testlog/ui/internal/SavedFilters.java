// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.testlog.ui.internal;

import java.util.ArrayList;
import java.util.List;
import org.ohmstead.testlog.search.Find;
import org.ohmstead.testlog.search.FindException;
import org.ohmstead.units.text.Messages;

/** Remembers the filters that the user gave a name. */
interface SavedFilters {
    /**
     * A filter with a name.
     *
     * @param name what the user calls it
     * @param text the query
     */
    record Saved(String name, String text) {
        /** Returns whether the query can still be understood. */
        boolean usable() {
            try {
                Find.parse(text);
                return true;
            } catch (FindException outdated) {
                return false;
            }
        }
    }

    /** Returns what is there until the user changes it. */
    static List<Saved> usual() {
        Messages texts = Messages.of(SavedFilters.class);
        return List.of(
                new Saved(texts.text("filters.usual.valid"), "kind:reading state:valid"),
                new Saved(texts.text("filters.usual.overdue"), "kind:reading overdue:yes"),
                new Saved(texts.text("filters.usual.voided"), "state:voided"),
                new Saved(texts.text("filters.usual.about"), "state:note,about"),
                new Saved(texts.text("filters.usual.unreadable"), "state:unreadable"));
    }

    /** Returns all of them, in the user's order. */
    List<Saved> all();

    /** Keeps these for the next time. */
    void keep(List<Saved> filters);

    /** Adds a filter at the end, or puts it in the place of the one that has its name. */
    default void add(Saved filter) {
        List<Saved> longer = new ArrayList<>(all());
        int place = place(longer, filter.name());
        if (place >= 0) {
            longer.set(place, filter);
        } else {
            longer.add(filter);
        }
        keep(longer);
    }

    /** Gives a filter another name; one that has that name already gives way. */
    default void rename(String from, String to) {
        List<Saved> renamed = new ArrayList<>(all());
        int place = place(renamed, from);
        if (place < 0 || from.equals(to)) {
            return;
        }
        Saved moved = new Saved(to, renamed.get(place).text());
        renamed.set(place, moved);
        renamed.removeIf(each -> each != moved && each.name().equals(to));
        keep(renamed);
    }

    /** Forgets a filter. */
    default void delete(String name) {
        keep(all().stream().filter(each -> !each.name().equals(name)).toList());
    }

    private static int place(List<Saved> filters, String name) {
        for (int index = 0; index < filters.size(); index++) {
            if (filters.get(index).name().equals(name)) {
                return index;
            }
        }
        return -1;
    }

    /** Writes filters as one text, for the settings: a line each, name and query between a tab. */
    static String toText(List<Saved> filters) {
        StringBuilder text = new StringBuilder();
        filters.forEach(each -> text.append(plain(each.name()))
                .append('\t')
                .append(plain(each.text()))
                .append('\n'));
        return text.toString();
    }

    private static String plain(String text) {
        return text.replaceAll("[\\t\\r\\n]+", " ");
    }

    /** Reads what {@link #toText} wrote. */
    static List<Saved> ofText(String text) {
        return text.lines()
                .map(line -> line.split("\t", 2))
                .filter(parts -> parts.length == 2 && !parts[0].isBlank())
                .map(parts -> new Saved(parts[0], parts[1]))
                .toList();
    }

    /** Returns a memory that lasts as long as the view. */
    static SavedFilters ofTheView() {
        return new SavedFilters() {
            private List<Saved> kept = usual();

            @Override
            public List<Saved> all() {
                return kept;
            }

            @Override
            public void keep(List<Saved> filters) {
                kept = List.copyOf(filters);
            }
        };
    }
}
