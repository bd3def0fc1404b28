// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.graphics.Rectangle;
import org.eclipse.swt.layout.FillLayout;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.FileDialog;
import org.ohmstead.model.Project;
import org.ohmstead.model.Reading;
import org.ohmstead.model.Severity;
import org.ohmstead.signal.ui.internal.CaptureOrder;
import org.ohmstead.signal.ui.internal.CaptureWork;
import org.ohmstead.signal.ui.internal.Certainty;
import org.ohmstead.signal.ui.internal.Figure;
import org.ohmstead.signal.ui.internal.Figures;
import org.ohmstead.signal.ui.internal.FiguresPane;
import org.ohmstead.signal.ui.internal.FiguresText;
import org.ohmstead.signal.ui.internal.FileBar;
import org.ohmstead.signal.ui.internal.HarmonicRow;
import org.ohmstead.signal.ui.internal.LevelChoice;
import org.ohmstead.signal.ui.internal.LoadedCapture;
import org.ohmstead.signal.ui.internal.LoadedChannel;
import org.ohmstead.signal.ui.internal.PlotsPane;
import org.ohmstead.signal.ui.internal.SelectorStrip;
import org.ohmstead.signal.ui.internal.StatusRow;
import org.ohmstead.signal.ui.internal.Texts;
import org.ohmstead.testlog.LogEntry;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;
import org.ohmstead.workbench.table.CopiedTable;

/**
 * Shows the captures of the reading that is looked at, or a file of the user's choice: waveform and spectrum, harmonics
 * and figures. All reading and analysis runs in the background.
 */
public final class CaptureComposite extends Composite {
    private static final String[] FILE_PATTERNS = {"*.wav;*.WAV;*.csv;*.CSV;*.txt", "*.*"};
    private static final int[] WEIGHTS = {62, 38};
    /** The height from which both charts, one above the other, and the figures have room. */
    private static final int LEAST_STACKED = 820;
    /** The height from which both charts, side by side, and the figures have room. */
    private static final int LEAST_BESIDE = 520;

    private final ProjectDesk desk;
    private final CaptureWork work;
    private final SelectorStrip strip;
    private final SashForm sash;
    private final Composite plotsRoom;
    private final Composite figuresRoom;
    private final Slices building;
    private StatusRow status;
    private PlotsPane plots;
    private FiguresPane figuresPane;
    /** Made when a file is opened, which is seldom. */
    private Optional<FileBar> fileBar = Optional.empty();

    private boolean complete;
    private boolean focusedLater;
    private Optional<LogEntry> entry = Optional.empty();
    private List<LevelChoice> levels = List.of();
    private Optional<LoadedCapture> loaded = Optional.empty();
    private Certainty certainty = Certainty.none();
    private List<Figure> figures = List.of();
    /** Whether what comes next belongs with what is shown, so that the user's windows stay. */
    private boolean sameReading;

    private boolean figuresOffered;

    /**
     * Makes the composite, whose parts come in the next turns of the event loop; then shows the reading that is
     * looked at, if any.
     *
     * @param desk which reading that is; its work does the reading and analysis
     */
    public CaptureComposite(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        this.work = new CaptureWork(this, desk.work());
        Spacing.group(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        strip = new SelectorStrip(
                this, this::loadLevel, this::showChannels, this::chooseFile, this::copyFigures, this::turn);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(strip);
        sash = new SashForm(this, SWT.VERTICAL);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(sash);
        plotsRoom = room(sash);
        figuresRoom = room(sash);
        sash.setWeights(WEIGHTS);
        addListener(SWT.Resize, event -> turn());
        building = new Slices(this);
        building.add(this::makePlots);
        building.add(this::makeFigures);
        building.add(this::start);
    }

    private static Composite room(Composite parent) {
        Composite room = new Composite(parent, SWT.NONE);
        room.setLayout(new FillLayout());
        return room;
    }

    private void makePlots() {
        plots = new PlotsPane(plotsRoom);
        plots.requestLayout();
    }

    private void makeFigures() {
        figuresPane = new FiguresPane(figuresRoom);
        figuresPane.onCopy(this::copyFigures);
        figuresPane.requestLayout();
        status = new StatusRow(this, this::stop);
        status.moveAbove(sash);
    }

    /** Shows the reading that is looked at when all parts are there. */
    private void start() {
        complete = true;
        Registration listening = desk.listen(new Listener());
        addListener(SWT.Dispose, event -> {
            work.stop();
            listening.close();
        });
        showEntry(desk.chosenEntry());
        // The user may have gone elsewhere meanwhile.
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            setFocus();
        }
    }

    /** Shows charts and figures, or where there is no room for both those that the user wants. */
    private void turn() {
        Rectangle area = getClientArea();
        boolean cramped = area.height < (PlotsPane.stacked(area.width, area.height) ? LEAST_STACKED : LEAST_BESIDE);
        if (cramped != figuresOffered) {
            figuresOffered = cramped;
            strip.offerFigures(cramped);
        }
        boolean figuresShown = !cramped || strip.figuresWanted();
        boolean plotsShown = !cramped || !strip.figuresWanted();
        if (figuresShown != figuresRoom.getVisible() || plotsShown != plotsRoom.getVisible()) {
            figuresRoom.setVisible(figuresShown);
            plotsRoom.setVisible(plotsShown);
            sash.layout();
        }
    }

    private final class Listener implements DeskListener {
        @Override
        public void chosenEntryChanged(Optional<LogEntry> chosen) {
            if (!isDisposed() && !chosen.equals(entry)) {
                showEntry(chosen);
            }
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            if (!isDisposed()) {
                showDisplay();
            }
        }

        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            if (!isDisposed() && !fileAsked()) {
                showEntry(desk.chosenEntry());
            }
        }
    }

    private void showDisplay() {
        plots.showDisplay();
        if (!levels.isEmpty() && !fileAsked()) {
            entry.flatMap(LogEntry::reading).ifPresent(reading -> strip.relabel(levelTexts(reading)));
        }
        loaded.ifPresent(capture -> showFigures(capture.channels()));
    }

    @Override
    public boolean setFocus() {
        if (!isDisposed() && !complete) {
            focusedLater = true;
            return forceFocus();
        }
        // A composite that is being disposed is asked to give the focus to one of its own.
        Composite first = fileAsked() ? fileBar.get() : strip;
        return !isDisposed() && !first.isDisposed() && first.setFocus();
    }

    private void showEntry(Optional<LogEntry> chosen) {
        showFileBar(false);
        entry = chosen;
        sameReading = false;
        Optional<Reading> reading = chosen.flatMap(LogEntry::reading);
        levels = reading.map(LevelChoice::of).orElse(List.of());
        if (reading.isEmpty() || levels.isEmpty()) {
            strip.showLevels("", List.of(), -1);
            work.stop();
            status.clear();
            showNothing(
                    chosen.isEmpty()
                            ? Texts.say("view.nothing")
                            : Texts.say("view.noCaptures", chosen.get().id()));
            return;
        }
        int first = levels.size() - 1;
        for (int i = 0; i < levels.size(); i++) {
            if (levels.get(i).isEndPoint()) {
                first = i;
                break;
            }
        }
        List<String> texts = levelTexts(reading.get());
        String title = Texts.say(
                chosen.get().voided() ? "view.reading.voided" : "view.reading",
                chosen.get().id(),
                reading.get().stepId());
        strip.showLevels(title, texts, first);
        loadLevel(first);
    }

    private List<String> levelTexts(Reading reading) {
        int channelCount = reading.channels().size();
        return levels.stream().map(level -> level.text(channelCount)).toList();
    }

    private void loadLevel(int index) {
        Optional<Reading> reading = entry.flatMap(LogEntry::reading);
        Optional<ProjectSession> session = desk.session();
        if (reading.isEmpty() || session.isEmpty() || index < 0 || index >= levels.size()) {
            return;
        }
        LevelChoice level = levels.get(index);
        Project project = session.get().project();
        load(
                CaptureOrder.logged(reading.get(), level.used(), session.get().capturesFolder(), project),
                Certainty.of(project, reading.get(), level));
    }

    private void chooseFile() {
        FileDialog dialog = new FileDialog(getShell(), SWT.OPEN);
        dialog.setText(Texts.say("view.openFile"));
        dialog.setFilterExtensions(FILE_PATTERNS);
        dialog.setFilterNames(new String[] {Texts.say("view.kind.captures"), Texts.say("view.kind.all")});
        String path = dialog.open();
        if (path != null) {
            askForFile(Path.of(path));
        }
    }

    /** Asks, in the view, for what must be known to show a file, which need not belong to a log. */
    public void askForFile(Path file) {
        if (!complete) {
            building.add(() -> askForFile(file));
            return;
        }
        work.stop();
        status.clear();
        showFileBar(true);
        strip.showLevels("", List.of(), -1);
        showNothing(Texts.say("view.askFile", file.getFileName()));
        fileBar.ifPresent(bar -> bar.ask(file));
    }

    private void loadFile(CaptureOrder order) {
        sameReading = false;
        load(order, Certainty.none());
    }

    private void closeFile() {
        showEntry(desk.chosenEntry());
    }

    private void load(CaptureOrder order, Certainty newCertainty) {
        work.start(order, status::working, capture -> showCapture(capture, newCertainty), this::showFailure);
    }

    private void stop() {
        work.stop();
        status.tell(Severity.NOTE, Texts.say("view.stopped"));
    }

    private void showFailure(String sentences) {
        showNothing(Texts.say("view.nothingToShow"));
        status.tell(Severity.ERROR, sentences);
    }

    private void showNothing(String sentence) {
        loaded = Optional.empty();
        strip.offerChannels(List.of());
        plots.showMessage(sentence);
        showFigures(List.of());
    }

    private void showCapture(LoadedCapture capture, Certainty newCertainty) {
        boolean keepWindows = sameReading && loaded.isPresent();
        loaded = Optional.of(capture);
        certainty = newCertainty;
        sameReading = true;
        strip.offerChannels(capture.channels().stream().map(LoadedChannel::name).toList());
        List<LoadedChannel> shown = shownChannels(capture);
        plots.show(capture, shown, keepWindows);
        showFigures(capture.channels());
        tellNotes(capture);
    }

    private void tellNotes(LoadedCapture capture) {
        List<String> without = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        for (LoadedChannel channel : capture.channels()) {
            if (channel.tone().isEmpty()) {
                without.add(Texts.say("view.channelWithout", channel.name(), channel.whyNot()));
            } else {
                channel.tone().get().analysis().notes().stream()
                        .filter(note -> !notes.contains(note))
                        .forEach(notes::add);
            }
        }
        if (!without.isEmpty()) {
            status.tell(Severity.WARNING, String.join(" ", without));
        } else if (!notes.isEmpty()) {
            status.tell(Severity.NOTE, String.join(" ", notes));
        } else {
            status.clear();
        }
    }

    private List<LoadedChannel> shownChannels(LoadedCapture capture) {
        return strip.shownChannels().stream()
                .filter(index -> index < capture.channels().size())
                .map(capture.channels()::get)
                .toList();
    }

    private void showChannels() {
        loaded.ifPresent(capture -> plots.show(capture, shownChannels(capture), true));
    }

    private void showFigures(List<LoadedChannel> channels) {
        figures = Figures.of(channels, certainty);
        figuresPane.show(channels.stream().map(LoadedChannel::name).toList(), figures, HarmonicRow.of(channels));
        strip.enableCopy(!figures.isEmpty());
    }

    private void copyFigures() {
        if (loaded.isPresent() && !figures.isEmpty()) {
            List<LoadedChannel> channels = loaded.get().channels();
            String text = Numbers.withPoint(
                    () -> FiguresText.of(loaded.get(), Figures.of(channels, certainty), HarmonicRow.of(channels)));
            CopiedTable.toClipboard(getDisplay(), text);
        }
    }

    private boolean fileAsked() {
        return fileBar.filter(FileBar::getVisible).isPresent();
    }

    private void showFileBar(boolean shown) {
        if (shown == fileAsked()) {
            return;
        }
        FileBar bar = fileBar.orElseGet(this::makeFileBar);
        GridDataFactory.fillDefaults().grab(true, false).exclude(!shown).applyTo(bar);
        bar.setVisible(shown);
        layout(true, true);
    }

    private FileBar makeFileBar() {
        FileBar bar = new FileBar(this, this::loadFile, this::closeFile);
        bar.moveBelow(strip);
        fileBar = Optional.of(bar);
        return bar;
    }
}
