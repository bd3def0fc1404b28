// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.measure.ui.internal;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.Function;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.eclipse.swt.widgets.Widget;
import org.ohmstead.jobs.PlanRuns;
import org.ohmstead.measure.bench.SimulatedBenchDriver;
import org.ohmstead.measure.engine.Catalog;
import org.ohmstead.measure.engine.PlanItem;
import org.ohmstead.measure.engine.PlanSetup;
import org.ohmstead.measure.engine.Rests;
import org.ohmstead.measure.standard.BurstPower;
import org.ohmstead.measure.standard.OutputImpedance;
import org.ohmstead.measure.standard.PowerAtEndPoint;
import org.ohmstead.measure.standard.ResidualNoise;
import org.ohmstead.model.Project;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.LogSnapshot.LogState;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.Unsaved;
import org.ohmstead.workbench.session.WorkProgress;

/** The demo's project in a folder of its own, the desk on which its plan is carried out, and a bare shell. */
final class ConsoleStage implements AutoCloseable {
    static final String SIMULATED = "org.ohmstead.bench.simulated";
    private static final long PATIENCE_NANOS = 30_000_000_000L;

    final Display display = Display.getDefault();
    final Path folder;
    final ProjectDesk desk;
    final Catalog catalog = new Catalog();
    final ConsoleMemory memory = ConsoleMemory.passing();
    final SimulatedBenchDriver simulated = new SimulatedBenchDriver();
    final OperatorQuestions questions = new OperatorQuestions();
    final Shell shell = new Shell(display);
    /** How long the amplifier rests before each item, on a bench that is real. */
    Duration rest = Duration.ZERO;

    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final AtomicReference<RunDesk> runs = new AtomicReference<>();

    /** Work on other threads, as the workbench's jobs. */
    private final class Elsewhere implements BackgroundWork {
        @Override
        public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
            threads.execute(new FutureTask<T>(() -> task.run(new Silent())) {
                @Override
                protected void done() {
                    later(() -> deliver(this, done, failed));
                }
            });
        }

        @Override
        public void later(Runnable action) {
            if (!display.isDisposed()) {
                display.asyncExec(action);
            }
        }
    }

    private static <T> void deliver(FutureTask<T> ended, Consumer<T> done, Consumer<Exception> failed) {
        T result;
        try {
            result = ended.get();
        } catch (ExecutionException failure) {
            if (failure.getCause() instanceof Exception cause && !(cause instanceof CancellationException)) {
                failed.accept(cause);
            }
            return;
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException("nobody interrupts the user interface", interrupted);
        }
        done.accept(result);
    }

    private static final class Silent implements WorkProgress {
        @Override
        public void step(int done, int total, String what) {
            // Nobody looks.
        }

        @Override
        public boolean cancelled() {
            return false;
        }
    }

    /** Plans as they are, with rests of the test's own. */
    private final class ShortPlans implements Plans {
        @Override
        public List<PlanItem> items(Project project) {
            return PlanRuns.items(project);
        }

        @Override
        public PlanSetup setup(
                Project project, String projectRevision, Path projectFolder, List<PlanItem> items, String operator) {
            return PlanRuns.setup(project, projectRevision, projectFolder, items, operator);
        }

        @Override
        public Rests rests(Project project, List<LogEntry> entries) {
            return (item, state) -> rest;
        }
    }

    ConsoleStage(Path folder) {
        this.folder = folder;
        this.desk = new ProjectDesk(new Elsewhere(), Clock.systemUTC());
        catalog.bindMeasurement(new PowerAtEndPoint());
        catalog.bindMeasurement(new BurstPower());
        catalog.bindMeasurement(new OutputImpedance());
        catalog.bindMeasurement(new ResidualNoise());
        catalog.bindDriver(simulated);
        shell.setLayout(new FillLayout());
        shell.setSize(1060, 560);
    }

    /** Puts the demo's project into the folder and opens it. */
    ConsoleStage open() throws IOException {
        Files.copy(Path.of("../../demo-data/larkspur.ohmstead/project.json"), folder.resolve("project.json"));
        AtomicReference<Exception> failure = new AtomicReference<>();
        desk.open(folder, Unsaved.DISCARD, session -> {}, failure::set);
        until("the project is open", () -> desk.session().isPresent() || failure.get() != null);
        if (failure.get() != null) {
            fail(failure.get());
        }
        until("the log is read", () -> desk.log().state() != LogState.READING);
        return this;
    }

    /** Returns the desk of runs; made when it is first asked for. */
    RunDesk runs() {
        if (runs.get() == null) {
            runs.set(new RunDesk(desk, catalog, new ShortPlans(), memory, questions, Clock.systemUTC()));
        }
        return runs.get();
    }

    /** Chooses the simulated bench and goes through the plan. */
    RunDesk ready() {
        runs().choose(choices -> choices.withDriver(SIMULATED, Map.of()).withOperator("N. N."));
        runs().begin();
        until(
                "the plan was gone through",
                () -> runs().whyNot().isEmpty() && runs().dryRuns().found().isPresent());
        return runs();
    }

    /** Shows what is made in the shell. */
    <C> C show(Function<Composite, C> maker) {
        C made = maker.apply(shell);
        shell.open();
        settle();
        return made;
    }

    List<LogEntry> entries() {
        return new ArrayList<>(desk.log().entries());
    }

    String said(String id) {
        return find(id, Label.class).getText();
    }

    void type(String id, String words) {
        Text text = find(id, Text.class);
        text.setText(words);
        text.notifyListeners(SWT.DefaultSelection, new Event());
        settle();
    }

    void press(String id) {
        Control control = find(id, Control.class);
        if (!control.isEnabled()) {
            fail(id + " is disabled");
        }
        if (control instanceof Button) {
            control.notifyListeners(SWT.Selection, new Event());
        } else {
            control.notifyListeners(SWT.MouseDown, new Event());
        }
        settle();
    }

    void settle() {
        while (display.readAndDispatch()) {
            // Until nothing is left to do.
        }
    }

    void until(String what, BooleanSupplier condition) {
        long deadline = System.nanoTime() + PATIENCE_NANOS;
        while (!condition.getAsBoolean()) {
            if (!display.readAndDispatch()) {
                if (System.nanoTime() > deadline) {
                    fail("waited too long until " + what + "; the console says "
                            + Optional.ofNullable(runs.get()).flatMap(RunDesk::message));
                }
                LockSupport.parkNanos(1_000_000);
            }
        }
        settle();
    }

    <W extends Widget> W find(String id, Class<W> type) {
        return Ids.find(shell, id, type);
    }

    @Override
    public void close() {
        shell.dispose();
        if (runs.get() != null) {
            runs.get().close();
        }
        desk.dispose();
        threads.shutdown();
        // What still reads the project would make files in its folder while that is being deleted.
        until("the work in the background has ended", threads::isTerminated);
    }
}
