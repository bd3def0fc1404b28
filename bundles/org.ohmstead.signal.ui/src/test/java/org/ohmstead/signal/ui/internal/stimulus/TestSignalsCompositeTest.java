// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.stimulus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Display;
import org.eclipse.swt.widgets.Event;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Scale;
import org.eclipse.swt.widgets.Shell;
import org.eclipse.swt.widgets.Text;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.WavFile;
import org.ohmstead.signal.stimulus.SignalKind;
import org.ohmstead.signal.stimulus.SoundOutput;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

class TestSignalsCompositeTest {
    private static final long DEADLINE_SECONDS = 60;

    @TempDir
    Path folder;

    private final Display display = Display.getDefault();
    private final Speaker speaker = new Speaker();
    private Shell shell;
    private TestSignalsComposite view;

    /** Work that is done at once, so that a test need not wait for it. */
    private final class AtOnce implements BackgroundWork {
        @Override
        public <T> void start(String title, Task<T> task, Consumer<T> done, Consumer<Exception> failed) {
            FutureTask<T> future = new FutureTask<>(() -> task.run(new WorkProgress() {
                @Override
                public void step(int step, int total, String what) {
                    assertTrue(step <= total);
                }

                @Override
                public boolean cancelled() {
                    return false;
                }
            }));
            future.run();
            try {
                done.accept(future.get());
            } catch (ExecutionException e) {
                assertFalse(e.getCause() instanceof CancellationException);
                failed.accept((Exception) e.getCause());
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        }

        @Override
        public void later(Runnable action) {
            display.asyncExec(action);
        }
    }

    /** Takes a second of sound, then waits until it is stopped. */
    private static final class Speaker implements SoundOutput, SoundOutput.Feed {
        private final AtomicLong octets = new AtomicLong();
        private final CountDownLatch stopped = new CountDownLatch(1);

        @Override
        public List<String> devices() {
            return List.of();
        }

        @Override
        public Feed open(String device, int sampleRateHz, int channels) {
            return this;
        }

        @Override
        public SampleFormat format() {
            return SampleFormat.INTEGER_16;
        }

        @Override
        public void write(byte[] frames) {
            if (octets.addAndGet(frames.length) > 192_000) {
                try {
                    assertTrue(stopped.await(DEADLINE_SECONDS, TimeUnit.SECONDS));
                } catch (InterruptedException e) {
                    throw new AssertionError(e);
                }
            }
        }

        @Override
        public void stopAtOnce() {
            stopped.countDown();
        }

        @Override
        public void close() {
            stopped.countDown();
        }
    }

    @BeforeEach
    void open() {
        shell = new Shell(display);
        shell.setLayout(new FillLayout());
        shell.setSize(1_200, 700);
        view = new TestSignalsComposite(shell, new AtOnce(), speaker);
        shell.open();
        pump();
    }

    @AfterEach
    void close() {
        shell.dispose();
        pump();
    }

    private void pump() {
        while (display.readAndDispatch()) {
            assertFalse(display.isDisposed());
        }
    }

    private void await(BooleanSupplier condition) {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(DEADLINE_SECONDS);
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < deadline, "not in time");
            if (!display.readAndDispatch()) {
                display.timerExec(20, () -> {});
                display.sleep();
            }
        }
    }

    private <C extends Control> C find(String id, Class<C> type) {
        return Ids.find(view, id, type);
    }

    private void press(String id) {
        find(id, Button.class).notifyListeners(SWT.Selection, new Event());
        pump();
    }

    private void tick(String id, boolean on) {
        find(id, Button.class).setSelection(on);
        press(id);
    }

    private void choose(SignalKind kind) {
        find("signals.kind", Combo.class).select(kind.ordinal());
        find("signals.kind", Combo.class).notifyListeners(SWT.Selection, new Event());
    }

    private String words(String id) {
        return find(id, Label.class).getText();
    }

    @Test
    void showsAUsualSineAtOnce() {
        assertEquals("-10.00 dBFS", words("signals.fact.rms"));
        assertEquals("3.01 dB", words("signals.fact.crest"));
        assertEquals("1000 Hz", words("signals.fact.frequency"));
        assertEquals("30 s, repeats", words("signals.fact.length"));
        assertTrue(find("signals.wave", ChartCanvas.class).message().isEmpty());
        assertTrue(words("signals.caution").contains("Loudspeakers off"));
        assertTrue(find("signals.save", Button.class).getEnabled());
    }

    @Test
    void aWrongSettingIsMarkedWhileOneTypes() {
        find("signals.frequency", Text.class).setText("much");
        await(() -> !words("signals.refusal").isEmpty());
        assertTrue(words("signals.refusal").contains("does not begin with a number"), words("signals.refusal"));
        assertTrue(find("signals.wave", ChartCanvas.class).message().isPresent());
        assertFalse(find("signals.save", Button.class).getEnabled());
        find("signals.frequency", Text.class).setText("40");
        await(() -> words("signals.refusal").isEmpty());
        assertEquals("40 Hz", words("signals.fact.frequency"));
    }

    @Test
    void eachKindHasItsFieldsAndKeepsWhatWasTyped() {
        for (SignalKind kind : SignalKind.values()) {
            choose(kind);
            await(() -> words("signals.purpose").equals(kind.purpose()));
            kind.settings().forEach(setting -> assertTrue(Ids.exists(view, "signals." + setting.id())));
        }
        choose(SignalKind.TONE_BURSTS);
        find("signals.frequency", Text.class).setText("30");
        await(() -> words("signals.remarks").contains("0.6 of a cycle"));
        // Milliseconds stand behind the field; another unit may be written.
        assertEquals("20", find("signals.on", Text.class).getText());
        find("signals.on", Text.class).setText("0.1 s");
        await(() -> words("signals.remarks").isEmpty());
        choose(SignalKind.SINE);
        choose(SignalKind.TONE_BURSTS);
        assertEquals("30", find("signals.frequency", Text.class).getText());
    }

    @Test
    void savesTheFileThatIsShown() throws Exception {
        find("signals.length", Text.class).setText("1");
        tick("signals.marked", true);
        await(() -> words("signals.fact.length").startsWith("1 s"));
        Path file = folder.resolve("tone.wav");
        view.save(file);
        pump();
        assertTrue(words("signals.outcome").contains("tone.wav is written"), words("signals.outcome"));
        // Silence, marker, gap, leader, gap, signal, gap, marker, silence.
        assertEquals(
                0.5 + 0.5 + 0.25 + 1 + 0.25 + 1 + 0.25 + 0.5 + 0.5,
                WavFile.read(file, new double[] {1}).channels().get(0).durationSeconds(),
                1e-9);
        view.save(folder.resolve("none/tone.wav"));
        pump();
        assertTrue(words("signals.outcome").contains("folder does not exist"), words("signals.outcome"));
    }

    @Test
    void makesTheSet() throws Exception {
        view.saveSet(folder.resolve("set"));
        pump();
        assertTrue(words("signals.outcome").startsWith("15 files"), words("signals.outcome"));
        try (var files = Files.list(folder.resolve("set"))) {
            assertEquals(17, files.count());
        }
    }

    @Test
    void playsOnlyWhenTheLoudspeakersAreOffAndStopsAtOnce() {
        assertFalse(find("signals.play", Button.class).getEnabled());
        tick("signals.loudspeakers-off", true);
        assertTrue(find("signals.play", Button.class).getEnabled());
        assertEquals(30, find("signals.volume", Scale.class).getSelection());
        press("signals.play");
        await(() -> speaker.octets.get() > 0);
        assertTrue(find("signals.stop", Button.class).getEnabled());
        tick("signals.loudspeakers-off", false);
        await(() -> !find("signals.stop", Button.class).getEnabled());
        assertEquals(0, speaker.stopped.getCount());
        assertFalse(find("signals.play", Button.class).getEnabled());
    }

    @Test
    void everyTextIsThereInGerman() throws Exception {
        assertEquals(keys("messages.properties"), keys("messages_de.properties"));
    }

    private static Object keys(String name) throws Exception {
        Properties texts = new Properties();
        try (var in =
                new InputStreamReader(TestSignalsComposite.class.getResourceAsStream(name), StandardCharsets.UTF_8)) {
            texts.load(in);
        }
        return texts.stringPropertyNames();
    }
}
