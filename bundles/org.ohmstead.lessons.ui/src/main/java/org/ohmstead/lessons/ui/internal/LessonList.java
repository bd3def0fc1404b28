// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.lessons.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.accessibility.AccessibleAdapter;
import org.eclipse.swt.accessibility.AccessibleEvent;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Table;
import org.eclipse.swt.widgets.TableItem;
import org.ohmstead.lessons.Lesson;
import org.ohmstead.model.Severity;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** The lessons there are, and what was wrong with descriptions of others. */
final class LessonList {
    private final Composite area;
    private final Table table;
    private final Composite problems;
    private List<Lesson> lessons = List.of();
    private List<String> shownProblems = List.of();

    /**
     * Makes an empty list.
     *
     * @param chosen hears which lesson the user chose
     * @param again runs when the user wants the lessons read again
     */
    LessonList(Composite parent, Consumer<Lesson> chosen, Runnable again) {
        area = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(area);
        table = Ids.name(new Table(area, SWT.BORDER | SWT.SINGLE | SWT.FULL_SELECTION), "lessons.list");
        GridDataFactory.fillDefaults().grab(true, true).hint(120, 80).applyTo(table);
        table.addListener(SWT.Selection, event -> {
            int index = table.getSelectionIndex();
            if (index >= 0) {
                chosen.accept(lessons.get(index));
            }
        });
        table.getAccessible().addAccessibleListener(new AccessibleAdapter() {
            @Override
            public void getName(AccessibleEvent event) {
                event.result = Texts.say("list.name");
            }
        });
        problems = Ids.name(new Composite(area, SWT.NONE), "lessons.problems");
        Spacing.tight(1).applyTo(problems);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(problems);
        Button read = Ids.name(new Button(area, SWT.PUSH), "lessons.again");
        read.setText(Texts.say("list.again"));
        read.setToolTipText(Texts.say("list.again.hint"));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(read);
        read.addListener(SWT.Selection, event -> again.run());
    }

    Composite control() {
        return area;
    }

    /** Shows a library; the choice is left to {@link #select}. */
    void show(LessonLibrary library) {
        lessons = library.lessons();
        table.setItemCount(lessons.size());
        for (int i = 0; i < lessons.size(); i++) {
            TableItem item = table.getItem(i);
            String name = Texts.numbered(i, lessons.get(i));
            if (!name.equals(item.getText())) {
                item.setText(name);
            }
        }
        showProblems(library.problems());
    }

    private void showProblems(List<String> sentences) {
        if (sentences.equals(shownProblems)) {
            return;
        }
        shownProblems = sentences;
        for (Control each : problems.getChildren()) {
            each.dispose();
        }
        for (String sentence : sentences) {
            MessageLine line = new MessageLine(problems, "lessons.problem");
            GridDataFactory.fillDefaults()
                    .grab(true, false)
                    .hint(1, SWT.DEFAULT)
                    .applyTo(line);
            line.show(Severity.ERROR, sentence);
        }
        area.layout(true, true);
    }

    /** Marks a lesson as the chosen one, without telling. */
    void select(Optional<Lesson> lesson) {
        int index = lesson.map(lessons::indexOf).orElse(-1);
        if (index != table.getSelectionIndex()) {
            if (index < 0) {
                table.deselectAll();
            } else {
                table.setSelection(index);
            }
        }
    }

    /** Returns the ids of the lessons, from top to bottom. */
    List<String> ids() {
        return lessons.stream().map(Lesson::id).toList();
    }

    boolean setFocus() {
        return !table.isDisposed() && table.setFocus();
    }
}
