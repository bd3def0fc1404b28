// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.custom.ScrolledComposite;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.measure.standard.LoggedGain;
import org.ohmstead.model.Project;
import org.ohmstead.model.Severity;
import org.ohmstead.signal.gain.GainWords;
import org.ohmstead.signal.gain.MeterCheck;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.session.DeskListener;
import org.ohmstead.workbench.session.DisplaySettings;
import org.ohmstead.workbench.session.LogSnapshot;
import org.ohmstead.workbench.session.ProjectDesk;
import org.ohmstead.workbench.session.ProjectSession;
import org.ohmstead.workbench.session.Registration;

/** Sets source and amplifier to each other, worked out anew at every change, and compares channels. */
public final class GainComposite extends Composite {
    private static final int[] FORM_AND_ANSWER = {32, 68};
    private static final int[] TABLE_AND_DIAGRAM = {48, 52};
    /** Closer than this no gain can be turned by hand. */
    private static final double CLOSE_ENOUGH_DB = 0.05;

    private final ProjectDesk desk;
    private final Messages messages = Messages.of(GainComposite.class);
    private final Slices building;
    private GainForm form;
    private LiveQuantity reads;
    private MessageLine turn;
    private Label summary;
    private GainTable table;
    private LevelDiagram diagram;
    private BalancePane balance;
    private MessageLine present;
    private MessageLine caution;
    private boolean complete;
    private boolean focusedLater;
    private Optional<Kept> earlier = Optional.empty();

    /** Makes the view; its parts come one after the other in the next turns of the event loop. */
    public GainComposite(Composite parent, ProjectDesk desk) {
        super(parent, SWT.NONE);
        this.desk = desk;
        building = new Slices(this);
        Spacing.page(1).margins(Spacing.GAP, Spacing.GAP).applyTo(this);
        SashForm main = new SashForm(this, SWT.HORIZONTAL | SWT.SMOOTH);
        main.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(main);
        ScrolledComposite left = new ScrolledComposite(main, SWT.V_SCROLL);
        Composite right = new Composite(main, SWT.NONE);
        Spacing.tight(1).applyTo(right);
        main.setWeights(FORM_AND_ANSWER);
        building.add(() -> {
            makeForm(left);
            building.add(() -> makeAnswer(right));
            building.add(() -> makeBelow(right));
            building.add(this::start);
        });
    }

    private void makeForm(ScrolledComposite parent) {
        Composite all = new Composite(parent, SWT.NONE);
        Spacing.tight(1).applyTo(all);
        form = new GainForm(all, messages, building);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        turn = new MessageLine(all, "gain.turn");
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(turn);
        parent.setContent(all);
        parent.setExpandHorizontal(true);
        parent.setExpandVertical(true);
        parent.setShowFocusedControl(true);
        parent.addListener(SWT.Resize, event -> fit(parent, all));
        form.addListener(SWT.Resize, event -> fit(parent, all));
        turn.addListener(SWT.Resize, event -> fit(parent, all));
    }

    private static void fit(ScrolledComposite scrolled, Composite content) {
        int width = scrolled.getClientArea().width;
        if (width > 0) {
            scrolled.setMinHeight(content.computeSize(width, SWT.DEFAULT, false).y);
        }
    }

    private void makeAnswer(Composite parent) {
        summary = Ids.name(new Label(parent, SWT.WRAP), "gain.summary");
        summary.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        GridDataFactory.fillDefaults().grab(true, false).hint(1, SWT.DEFAULT).applyTo(summary);
        SashForm sash = new SashForm(parent, SWT.HORIZONTAL | SWT.SMOOTH);
        sash.setSashWidth(Spacing.GAP);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(sash);
        table = new GainTable(sash, messages);
        table.onChoice(meaning -> present.mention(meaning));
        diagram = new LevelDiagram(sash, messages);
        sash.setWeights(TABLE_AND_DIAGRAM);
    }

    private void makeBelow(Composite parent) {
        present = new MessageLine(parent, "gain.present");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(present);
        balance = new BalancePane(parent, messages, this::facts);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(balance);
        caution = new MessageLine(parent, "gain.caution");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(caution);
        parent.layout(true, true);
    }

    private void start() {
        complete = true;
        reads = new LiveQuantity(form.readsText(), Measure.of(Unit.VOLT));
        reads.onTyping(this::sayTurn);
        form.onChange(this::reckon);
        form.onRefusal(this::sayTurn);
        Registration listening = desk.listen(new Hears());
        addDisposeListener(event -> listening.close());
        earlier.ifPresent(values -> form.restore(values.fullScaleVoltsRms(), values.overlapDb()));
        takeSession();
        if (focusedLater && (isFocusControl() || getDisplay().getFocusControl() == null)) {
            form.setFocus();
        }
    }

    private final class Hears implements DeskListener {
        @Override
        public void sessionChanged(Optional<ProjectSession> session) {
            takeSession();
        }

        @Override
        public void projectChanged(Project before, Project after) {
            if (!before.amplifier().ratings().equals(after.amplifier().ratings())) {
                form.setRatings(after.amplifier().ratings());
            }
            reckon();
        }

        @Override
        public void logChanged(LogSnapshot log) {
            form.offerFullScale(facts().fullScaleVoltsRms());
            balance.logChanged();
            reckon();
        }

        @Override
        public void displayChanged(DisplaySettings settings) {
            form.refresh();
            balance.refresh();
            reckon();
        }
    }

    private LogFacts facts() {
        Optional<Project> project = desk.session().map(ProjectSession::project);
        return project.isEmpty()
                ? LogFacts.NONE
                : new LogFacts(project, desk.log().entries());
    }

    private void takeSession() {
        Optional<Project> project = desk.session().map(ProjectSession::project);
        form.forgetTyping();
        form.setRatings(project.map(open -> open.amplifier().ratings()).orElse(List.of()));
        if (project.isPresent()) {
            form.takeFirstRating();
        }
        form.offerFullScale(facts().fullScaleVoltsRms());
        balance.logChanged();
        reckon();
    }

    private void reckon() {
        GainInputs inputs = form.inputs();
        Optional<LogFacts.Found<LoggedGain>> gain = facts().gain(inputs.target().bridged(), inputs.fullScaleVoltsRms());
        GainWords words = words();
        MeterCheck check = inputs.check();
        say(summary, words.summary(inputs.setup()));
        table.show(GainRows.of(inputs, gain, messages));
        diagram.show(LevelLadder.of(inputs.setup(), check, messages));
        present.mention(
                desk.session().isPresent() && gain.isEmpty()
                        ? messages.text("present.none")
                        : words.fullScale(inputs.setup()));
        caution.show(Severity.WARNING, String.join(" ", words.cautions(inputs.setup(), check)));
        sayTurn();
    }

    private static GainWords words() {
        return GainWords.current().withDecimalComma(Numbers.decimalComma());
    }

    /** Says what is wrong with a field, else by how much to turn, or how to go about it while no reading is typed. */
    private void sayTurn() {
        if (!complete) {
            return;
        }
        Optional<String> problem = form.problem();
        if (problem.isPresent()) {
            turn.show(Severity.ERROR, problem.get());
            return;
        }
        MeterCheck check = form.inputs().check();
        OptionalDouble volts = reads.value();
        turn.mention(
                volts.isPresent()
                        ? words().change(check.gainChangeDb(volts.getAsDouble()), CLOSE_ENOUGH_DB)
                        : words().procedure(check));
    }

    private static void say(Label label, String words) {
        if (!words.equals(label.getText())) {
            label.setText(words);
            label.requestLayout();
        }
    }

    /** Puts what an earlier session kept in place. */
    public void restore(Kept kept) {
        earlier = Optional.of(kept);
    }

    /** Returns what a later session may begin with; empty while the view is not complete and knows of none. */
    public Optional<Kept> kept() {
        return complete
                ? Optional.of(new Kept(
                        form.inputs().fullScaleVoltsRms(), form.inputs().overlapDb()))
                : earlier;
    }

    @Override
    public boolean setFocus() {
        if (!complete) {
            focusedLater = true;
            return forceFocus();
        }
        return form.setFocus();
    }
}
