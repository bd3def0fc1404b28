// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.session;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import org.ohmstead.model.Project;
import org.ohmstead.model.SetAside;
import org.ohmstead.model.SharedLog;

/** What can be done to a session and behind its back, drawn by chance. */
final class SessionActions {
    /** What is done. */
    enum Kind {
        EDIT,
        TYPE,
        FAIL,
        WAIT,
        UNDO,
        REDO,
        SAVE,
        REVERT,
        WRITE_OUTSIDE,
        BREAK_OUTSIDE,
        DELETE_OUTSIDE,
        CHECK,
        RELOAD,
        KEEP_MINE
    }

    /** An action; {@code what} and {@code value} say which edit it is or how long to wait. */
    record Action(Kind kind, int what, int value) {}

    private static final int EDITS = 17;

    private SessionActions() {}

    static Arbitrary<List<Action>> any() {
        Arbitrary<Kind> kinds = Arbitraries.frequency(
                Tuple.of(12, Kind.EDIT),
                Tuple.of(8, Kind.TYPE),
                Tuple.of(1, Kind.FAIL),
                Tuple.of(2, Kind.WAIT),
                Tuple.of(10, Kind.UNDO),
                Tuple.of(7, Kind.REDO),
                Tuple.of(3, Kind.SAVE),
                Tuple.of(1, Kind.REVERT),
                Tuple.of(2, Kind.WRITE_OUTSIDE),
                Tuple.of(1, Kind.BREAK_OUTSIDE),
                Tuple.of(1, Kind.DELETE_OUTSIDE),
                Tuple.of(2, Kind.CHECK),
                Tuple.of(2, Kind.RELOAD),
                Tuple.of(2, Kind.KEEP_MINE));
        return Combinators.combine(
                        kinds,
                        Arbitraries.integers().between(0, EDITS - 1),
                        Arbitraries.integers().between(0, 3))
                .as(Action::new)
                .list()
                .ofMinSize(1)
                .ofMaxSize(40);
    }

    /** Returns one of the edits that the pages offer; some do nothing to some projects. */
    static UnaryOperator<Project> edit(int what, int value) {
        return switch (what) {
            case 0 -> project -> project.withTitle("Title " + value);
            case 1 -> project -> project.withAmplifier(project.amplifier().withModel("Model " + value));
            case 2 ->
                project -> project.withAmplifier(project.amplifier()
                        .withRatings(added(project.amplifier().ratings(), rating -> rating.withId("rating " + value)
                                .withPowerWatts(10 + value))));
            case 3 ->
                project -> project.withAmplifier(
                        project.amplifier().withRatings(less(project.amplifier().ratings(), value)));
            case 4 ->
                project -> project.withLoads(added(
                        project.loads(), load -> load.withId("load " + value).withNominalOhms(1 + value)));
            case 5 -> project -> project.withLoads(less(project.loads(), value));
            case 6 ->
                project -> project.withPlan(added(
                        project.plan(), step -> step.withId("step " + value).withSupplyVolts(11.5 + value)));
            case 7 -> project -> project.withPlan(less(project.plan(), value));
            case 8 -> project -> project.withPlan(turned(project.plan()));
            case 9 -> project -> project.withSetAside(setAside(project.setAside(), value));
            case 10 -> project -> project.withSetAside(less(project.setAside(), value));
            default -> benchAndSheet(what, value);
        };
    }

    private static UnaryOperator<Project> benchAndSheet(int what, int value) {
        return switch (what) {
            case 11 -> project -> project.withBench(project.bench().withPlace("Room " + value));
            case 12 ->
                project -> project.withBench(
                        project.bench().withMeters(less(project.bench().meters(), value)));
            case 13 ->
                project -> project.withBench(project.bench()
                        .withAmbientCelsius(value == 0 ? OptionalDouble.empty() : OptionalDouble.of(20.1 + value)));
            case 14 -> project -> project.withSheet(project.sheet().withRemarks("Remark \u03a9 " + value));
            case 15 ->
                project -> project.withSharedLog(
                        value == 0
                                ? Optional.empty()
                                : Optional.of(new SharedLog("host" + value, SharedLog.USUAL_PORT, "d", "b", "")));
            default -> project -> project;
        };
    }

    private static <T> List<T> added(List<T> rows, UnaryOperator<T> changed) {
        List<T> more = new ArrayList<>(rows);
        rows.stream().findFirst().map(changed).ifPresent(more::add);
        return more;
    }

    private static <T> List<T> less(List<T> rows, int which) {
        List<T> fewer = new ArrayList<>(rows);
        if (!rows.isEmpty()) {
            fewer.remove(which % rows.size());
        }
        return fewer;
    }

    private static <T> List<T> turned(List<T> rows) {
        List<T> turned = new ArrayList<>(rows);
        Collections.rotate(turned, 1);
        return turned;
    }

    private static List<SetAside> setAside(List<SetAside> before, int value) {
        List<SetAside> after = new ArrayList<>(before);
        after.removeIf(each -> each.entryId().equals("R000" + value));
        after.add(new SetAside("R000" + value, "a lead was loose"));
        return after;
    }
}
