// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Control;
import org.ohmstead.model.HeatData;
import org.ohmstead.model.Problem;
import org.ohmstead.model.Project;
import org.ohmstead.model.Range;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;

/** The fields of the page, each tied to a value of the project's heat data: it shows it, and changes it by an edit of its own name. */
final class HeatBindings {
    private static final Messages TEXTS = Messages.of(HeatBindings.class);

    private final ProjectDesk desk;
    private final Runnable grown;
    private final List<Bound> all = new ArrayList<>();
    private int caughtUp;

    /**
     * Ties nothing yet.
     *
     * @param desk where the project is
     * @param grown called when a message may have changed the height of the page
     */
    HeatBindings(ProjectDesk desk, Runnable grown) {
        this.desk = desk;
        this.grown = grown;
    }

    /** Something on the page that follows the project. */
    interface Bound {
        /** Shows what the project holds now. */
        void show(Project project);

        /**
         * Carries the problems that it is about.
         *
         * @param problems all of the project
         */
        default void problems(List<Problem> problems) {}

        /**
         * Lets the user change it or not.
         *
         * @param readOnly whether it can only be looked at
         */
        default void readOnly(boolean readOnly) {}

        /**
         * Puts the keyboard there when it shows a place; returns whether it does.
         *
         * @param where JSON path of the place
         */
        default boolean reveal(String where) {
            return false;
        }
    }

    void add(Bound bound) {
        all.add(bound);
    }

    /** Changes the project's heat data unless it is open for reading only. */
    void edit(String name, UnaryOperator<HeatData> change) {
        editProject(name, project -> project.withHeat(change.apply(project.heat())));
    }

    /** Changes the project unless it is open for reading only. */
    void editProject(String name, UnaryOperator<Project> change) {
        desk.session().filter(session -> !session.readOnly()).ifPresent(session -> session.edit(name, change));
    }

    /** Ties a field to the value at a path below {@code $.heat}. */
    <T> void bind(
            Field<T> field,
            String path,
            String words,
            Function<HeatData, T> get,
            BiFunction<HeatData, T, HeatData> with) {
        field.onCommit(value -> edit(TEXTS.text("edit.set", words), heat -> with.apply(heat, value)));
        watch(field.control());
        add(new Bound() {
            @Override
            public void show(Project project) {
                field.setValue(get.apply(project.heat()));
            }

            @Override
            public void problems(List<Problem> problems) {
                field.setRemark(at(problems, path));
            }

            @Override
            public void readOnly(boolean readOnly) {
                field.setReadOnly(readOnly);
            }

            @Override
            public boolean reveal(String where) {
                return where.equals(place(path)) && focused(field::focus);
            }
        });
    }

    /** Ties a field of a range. */
    void bind(
            RangeField field,
            String path,
            String words,
            Function<HeatData, Optional<Range>> get,
            BiFunction<HeatData, Optional<Range>, HeatData> with) {
        field.onCommit(value -> edit(TEXTS.text("edit.set", words), heat -> with.apply(heat, value)));
        watch(field.control());
        add(new Bound() {
            @Override
            public void show(Project project) {
                field.setValue(get.apply(project.heat()));
            }

            @Override
            public void problems(List<Problem> problems) {
                field.setRemark(at(problems, path));
            }

            @Override
            public void readOnly(boolean readOnly) {
                field.setReadOnly(readOnly);
            }

            @Override
            public boolean reveal(String where) {
                return where.startsWith(place(path)) && focused(field::focus);
            }
        });
    }

    /** A message below a field appears only after the field has dealt with the event. */
    private void watch(Control control) {
        control.addListener(SWT.FocusOut, event -> grown.run());
        control.addListener(SWT.DefaultSelection, event -> grown.run());
        control.addListener(SWT.KeyUp, event -> grown.run());
    }

    private static boolean focused(Runnable focus) {
        focus.run();
        return true;
    }

    private static Optional<Problem> at(List<Problem> problems, String path) {
        return problems.stream()
                .filter(problem -> problem.where().equals(place(path)))
                .findFirst();
    }

    private static String place(String path) {
        return "$.heat." + path;
    }

    void show(Project project) {
        all.forEach(bound -> bound.show(project));
        grown.run();
    }

    void problems(List<Problem> problems) {
        all.forEach(bound -> bound.problems(problems));
        grown.run();
    }

    void readOnly(boolean readOnly) {
        all.forEach(bound -> bound.readOnly(readOnly));
    }

    boolean reveal(String where) {
        return all.stream().anyMatch(bound -> bound.reveal(where));
    }

    /** Shows the open project in what was tied since the last time. */
    void catchUp() {
        show(all.subList(caughtUp, all.size()));
        caughtUp = all.size();
    }

    /** Shows another project, or none, in everything. */
    void showAll() {
        show(all);
    }

    private void show(List<Bound> some) {
        Optional<ProjectSession> session = desk.session();
        boolean readOnly = session.map(ProjectSession::readOnly).orElse(true);
        for (Bound bound : some) {
            session.ifPresent(open -> {
                bound.show(open.project());
                bound.problems(desk.problems());
            });
            bound.readOnly(readOnly);
        }
    }

    /** Refuses a range that does not lie above 0. */
    static Consumer<Range> above(double least, String sentence) {
        return range -> require(range.low() > least, sentence);
    }

    /** Refuses a quantity, when there is one, that does not lie between two values, both allowed. */
    static Consumer<OptionalDouble> within(double least, double most, String sentence) {
        return value -> value.ifPresent(number -> require(number >= least && number <= most, sentence));
    }

    /** Refuses a quantity, when there is one, that is not above 0. */
    static Consumer<OptionalDouble> positive() {
        return value -> value.ifPresent(number -> require(number > 0, TEXTS.text("check.positive")));
    }

    static void require(boolean holds, String sentence) {
        if (!holds) {
            throw new IllegalArgumentException(sentence);
        }
    }
}
