// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.stimulus;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.DirectoryDialog;
import org.eclipse.swt.widgets.FileDialog;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Severity;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.signal.stimulus.RenderProgress;
import org.ohmstead.signal.stimulus.SignalFile;
import org.ohmstead.signal.stimulus.SignalSet;
import org.ohmstead.signal.stimulus.SoundOutput;
import org.ohmstead.signal.stimulus.Stimulus;
import org.ohmstead.signal.stimulus.StimulusRemark;
import org.ohmstead.signal.stimulus.TestSignal;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;
import org.ohmstead.workbench.session.BackgroundWork;
import org.ohmstead.workbench.session.WorkProgress;

/** Test signals: chosen, looked at, saved as a file or a set of files, and played. */
public final class TestSignalsComposite extends Composite {
    private static final int[] FORM_AND_PICTURES = {34, 66};
    private static final int[] WAVE_AND_SPECTRUM = {46, 54};
    private static final int STEPS = 1000;
    private static final double SET_OVERLAP_DB = 10;

    private final BackgroundWork work;
    private final Messages messages = Messages.of(TestSignalsComposite.class);
    private final Slices building;
    private SignalForm form;
    private FactsRow facts;
    private MessageLine remarks;
    private ChartCanvas wave;
    private ChartCanvas spectrum;
    private Button save;
    private MessageLine outcome;
    private PlayBar play;
    private Optional<SignalFile> file = Optional.empty();
    private long newest;

    /**
     * Makes the view, with a usual sine.
     *
     * @param work does what takes long
     * @param output where signals are played
     */
    public TestSignalsComposite(Composite parent, BackgroundWork work, SoundOutput output) {
        super(parent, SWT.NONE);
        this.work = work;
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        MessageLine caution = new MessageLine(this, "signals.caution");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(caution);
        caution.show(Severity.WARNING, messages.text("caution"));
        SashForm main = sash(this, SWT.HORIZONTAL);
        ScrolledComposite scrolled = new ScrolledComposite(main, SWT.V_SCROLL);
        Composite right = new Composite(main, SWT.NONE);
        Spacing.group(1).applyTo(right);
        main.setWeights(FORM_AND_PICTURES);
        Composite bar = new Composite(this, SWT.NONE);
        Spacing.group(3).applyTo(bar);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(bar);
        // All at once would keep the keys waiting.
        building = new Slices(this);
        building.add(() -> makeForm(scrolled));
        building.add(() -> form.makeFile());
        building.add(() -> form.makeSettings());
        building.add(() -> makeFacts(right));
        building.add(() -> makeCharts(right));
        building.add(() -> makeButtons(bar));
        building.add(() -> makePlaying(bar, output));
        building.add(this::look);
    }

    private void makeForm(ScrolledComposite scrolled) {
        form = new SignalForm(scrolled, messages, this::look);
        scroll(scrolled);
    }

    private void makeFacts(Composite right) {
        facts = new FactsRow(right, messages);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(facts);
        remarks = new MessageLine(right, "signals.remarks");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(remarks);
        facts.requestLayout();
    }

    private void makeCharts(Composite right) {
        SashForm charts = sash(right, SWT.VERTICAL);
        wave = Ids.name(new ChartCanvas(charts, SWT.BORDER), "signals.wave");
        spectrum = Ids.name(new ChartCanvas(charts, SWT.BORDER), "signals.spectrum");
        charts.setWeights(WAVE_AND_SPECTRUM);
        charts.requestLayout();
    }

    private void makeButtons(Composite bar) {
        save = button(bar, "save", "signals.save", this::askForFile);
        button(bar, "set", "signals.set", this::askForFolder);
        save.requestLayout();
    }

    private void makePlaying(Composite bar, SoundOutput output) {
        outcome = new MessageLine(this, "signals.outcome");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(outcome);
        play = new PlayBar(bar, work, output, messages, this::tellFailure);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(play);
        play.requestLayout();
    }

    private static SashForm sash(Composite parent, int direction) {
        SashForm sash = new SashForm(parent, direction | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(sash);
        return sash;
    }

    private void scroll(ScrolledComposite scrolled) {
        scrolled.setContent(form);
        scrolled.setExpandHorizontal(true);
        scrolled.setExpandVertical(true);
        scrolled.setShowFocusedControl(true);
        scrolled.addListener(SWT.Resize, event -> fit(scrolled));
    }

    private void fit(ScrolledComposite scrolled) {
        int width = scrolled.getClientArea().width;
        if (width > 0) {
            scrolled.setMinHeight(form.computeSize(width, SWT.DEFAULT).y);
        }
    }

    private Button button(Composite parent, String text, String id, Runnable pressed) {
        Button button = Ids.name(new Button(parent, SWT.PUSH), id);
        button.setText(messages.text(text));
        button.setToolTipText(messages.text(text + ".hint"));
        button.addListener(SWT.Selection, event -> pressed.run());
        return button;
    }

    /** Works out what the form says in the background; of several only the newest is shown. */
    private void look() {
        newest++;
        long number = newest;
        SignalChoice choice = form.choice();
        if (form.getParent() instanceof ScrolledComposite scrolled) {
            fit(scrolled);
        }
        work.start(
                messages.text("look.title"),
                progress -> SignalPreview.of(choice),
                preview -> {
                    if (number == newest && !isDisposed()) {
                        show(preview, choice);
                    }
                },
                failure -> {
                    if (number == newest && !isDisposed()) {
                        tellFailure(String.valueOf(failure.getMessage()));
                    }
                });
    }

    private void show(SignalPreview preview, SignalChoice choice) {
        if (preview instanceof SignalPreview.Refused refused) {
            form.refuse(refused.settingId(), refused.sentence());
            file = Optional.empty();
            facts.clear();
            remarks.clear();
            wave.showMessage(messages.text("look.none"));
            spectrum.showMessage("");
        } else {
            SignalPreview.Shown shown = (SignalPreview.Shown) preview;
            form.refuse("", "");
            file = Optional.of(shown.file()).filter(made -> made.stimulus().usable());
            facts.show(shown.file());
            showRemarks(shown.file().remarks());
            ReadOutStyle style = new ReadOutStyle(Numbers.decimalComma(), ReadOutStyle.USUAL.coverage());
            wave.setReadOutStyle(style);
            spectrum.setReadOutStyle(style);
            wave.show(shown.wave(), false);
            shown.window().ifPresent(wave::zoomTo);
            spectrum.show(shown.spectrum(), false);
        }
        save.setEnabled(file.isPresent());
        play.offer(file.map(SignalFile::stimulus).filter(Stimulus::usable), choice.channels());
    }

    private void showRemarks(List<StimulusRemark> all) {
        if (all.isEmpty()) {
            remarks.clear();
            return;
        }
        String sentences = all.stream().map(StimulusRemark::sentence).collect(Collectors.joining(" "));
        boolean prevented = all.stream().anyMatch(StimulusRemark::prevents);
        boolean burst = all.stream().anyMatch(remark -> remark.key().startsWith("burst"));
        if (prevented || burst) {
            remarks.show(prevented ? Severity.ERROR : Severity.WARNING, sentences);
        } else {
            remarks.mention(sentences);
        }
    }

    private void askForFile() {
        FileDialog dialog = new FileDialog(getShell(), SWT.SAVE);
        dialog.setText(messages.text("save.title"));
        dialog.setFileName(form.choice().kind().id() + ".wav");
        dialog.setFilterExtensions(new String[] {"*.wav"});
        dialog.setOverwrite(true);
        String path = dialog.open();
        if (path != null) {
            save(Path.of(path));
        }
    }

    private void askForFolder() {
        DirectoryDialog dialog = new DirectoryDialog(getShell(), SWT.SAVE);
        dialog.setText(messages.text("set.title"));
        dialog.setMessage(messages.text("set.message"));
        String path = dialog.open();
        if (path != null) {
            saveSet(Path.of(path));
        }
    }

    /** Writes the signal that is shown, as a file. */
    public void save(Path path) {
        SignalFile made = file.orElseThrow();
        outcome.mention(messages.text("save.busy", path.getFileName()));
        work.start(
                messages.text("save.work", path.getFileName()),
                progress -> made.write(path, steps(progress, String.valueOf(path.getFileName()))),
                written -> tell(messages.text(
                        written.limited() > 0 ? "save.limited" : "save.done",
                        path,
                        made.fileBytes() / 1e6,
                        written.limited())),
                failure -> tellFailure(String.valueOf(failure.getMessage())));
    }

    /** Writes the standard set with its index into a folder, stored as the form says. */
    public void saveSet(Path folder) {
        SignalChoice choice = form.choice();
        SignalSet set = SignalSet.standard(SET_OVERLAP_DB);
        SignalSet.Making making = new SignalSet.Making(choice.sampleRateHz(), choice.format(), choice.channels(), 1);
        outcome.mention(messages.text("set.busy"));
        work.start(
                messages.text("set.work"),
                progress -> set.write(folder, making, steps(progress, messages.text("set.work"))),
                written -> tell(messages.text("set.done", written.size(), folder)),
                failure -> tellFailure(String.valueOf(failure.getMessage())));
    }

    private static RenderProgress steps(WorkProgress progress, String what) {
        return ratio -> {
            if (progress.cancelled()) {
                throw new CancellationException("Cancelled by the user.");
            }
            progress.step((int) (STEPS * ratio), STEPS, what);
            return true;
        };
    }

    private void tell(String sentence) {
        if (!isDisposed()) {
            outcome.mention(sentence);
        }
    }

    private void tellFailure(String sentence) {
        if (!isDisposed()) {
            outcome.show(Severity.ERROR, sentence);
        }
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && form != null && !form.isDisposed() && form.setFocus();
    }

    /** A place for a figure with its name. */
    private static final class FactsRow extends Composite {
        private static final String[] NAMES = {"rms", "peak", "crest", "frequency", "length", "size"};

        private final Messages messages;
        private final Label[] values = new Label[NAMES.length];

        FactsRow(Composite parent, Messages messages) {
            super(parent, SWT.NONE);
            this.messages = messages;
            Spacing.group(NAMES.length).equalWidth(false).applyTo(this);
            for (int i = 0; i < NAMES.length; i++) {
                Composite cell = new Composite(this, SWT.NONE);
                Spacing.tight(1).spacing(0, 0).applyTo(cell);
                GridDataFactory.fillDefaults().grab(true, false).applyTo(cell);
                Label name = new Label(cell, SWT.NONE);
                name.setText(messages.text("fact." + NAMES[i]));
                name.setForeground(Tones.of(this).mutedText());
                values[i] = Ids.name(new Label(cell, SWT.NONE), "signals.fact." + NAMES[i]);
                GridDataFactory.fillDefaults().grab(true, false).applyTo(values[i]);
            }
        }

        void show(SignalFile made) {
            var found = made.stimulus().facts();
            List<Double> hertz = found.frequenciesHz();
            put(0, messages.text("fact.dbfs", found.rmsDbfs()));
            put(1, messages.text("fact.dbfs", found.peakDbfs()));
            put(2, messages.text("fact.db", found.crestFactorDb()));
            put(3, frequencies(made.stimulus().signal(), hertz));
            put(
                    4,
                    messages.text(
                            found.seamless() ? "fact.seconds.loop" : "fact.seconds",
                            made.stimulus().durationSeconds()));
            put(5, messages.text("fact.megabytes", made.fileBytes() / 1e6));
            layout(true, true);
        }

        private String frequencies(TestSignal signal, List<Double> hertz) {
            double first = hertz.get(0);
            double last = hertz.get(hertz.size() - 1);
            if (hertz.size() == 1) {
                return messages.text("fact.hertz", first);
            }
            if (signal instanceof TestSignal.TwoTone) {
                return messages.text("fact.hertz.both", first, last);
            }
            return hertz.size() == 2
                    ? messages.text("fact.hertz.range", first, last)
                    : messages.text("fact.hertz.more", hertz.size(), first, last);
        }

        void clear() {
            for (int i = 0; i < values.length; i++) {
                put(i, "\u2013");
            }
        }

        private void put(int index, String text) {
            values[index].setText(text);
            values[index].setToolTipText(text);
        }
    }
}
