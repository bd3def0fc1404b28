// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.thermal.ui.internal;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.model.Mode;
import org.ohmstead.model.OutputClass;
import org.ohmstead.model.Project;
import org.ohmstead.model.Step;
import org.ohmstead.model.Stimulus;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.ChoiceField;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.IntegerField;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.form.QuantityField;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;

/** The fields of a {@link StepQuestion}. */
final class StepForm extends Composite {
    private static final Messages TEXTS = Messages.of(StepForm.class);
    private static final double USUAL_VOLTS = 14.4;
    private static final double USUAL_OHMS = 4;
    private static final double USUAL_WATTS = 50;
    private static final double USUAL_CELSIUS = 25;
    private static final double USUAL_SECONDS = 20;
    /** A burst of 20 ms every 500 ms, 20 dB down between: as the plan's usual one. */
    private static final double USUAL_ON_SECONDS = 0.02;

    private static final double USUAL_PERIOD_SECONDS = 0.5;
    private static final double USUAL_LOW_DB = -20;
    private static final double USUAL_CREST_DB = 12;
    private static final double MOST_CREST_DB = 40;
    private static final double LEAST_CREST_DB = 9;
    private static final double LOWEST_DB = -200;
    private static final double COLDEST_CELSIUS = -60;
    private static final double HOTTEST_CELSIUS = 120;
    private static final int MOST_CHANNELS = 16;
    private static final int STEP_WIDTH = 150;
    /** The choice of no step of the plan. */
    private static final String FREELY = "";

    private ChoiceField<String> step;
    private Label origin;
    private QuantityField supply;
    private ChoiceField<Mode> mode;
    private QuantityField load;
    private IntegerField channels;
    private QuantityField power;
    private ChoiceField<StepSignal> signal;
    private QuantityField burstOn;
    private QuantityField burstPeriod;
    private QuantityField burstLow;
    private QuantityField crest;
    private QuantityField seconds;
    private ChoiceField<OutputClass> kind;
    private RangeField efficiency;
    private OptionalQuantityField input;
    private QuantityField air;
    private List<Step> plan = List.of();
    private Runnable changed = () -> {};
    private Consumer<Step> chosen = any -> {};

    /** Makes the form and has its fields made later; nothing else may be asked of it until then. */
    StepForm(Composite parent, Slices building) {
        super(parent, SWT.NONE);
        Spacing.group(1).applyTo(this);
        FormSection form = new FormSection(this, "calc", TEXTS.text("form.heading"));
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        building.add(() -> makeStep(form));
        building.add(() -> makeLoad(form));
        building.add(() -> makeSignal(form));
        building.add(() -> makeLength(form));
        building.add(() -> makeAmplifier(form));
        building.add(() -> {
            hints();
            checks();
            listen();
            usual();
        });
    }

    private void makeStep(FormSection form) {
        step = form.choice(
                "step",
                TEXTS.text("form.step"),
                List.of(FREELY),
                text -> text.equals(FREELY) ? TEXTS.text("form.freely") : text);
        ((GridData) step.control().getLayoutData()).widthHint = STEP_WIDTH;
        origin = Ids.name(form.note(""), "calc.origin");
        supply = form.quantity("supply", TEXTS.text("form.supply"), Measure.of(Unit.VOLT));
        mode = form.choice("mode", TEXTS.text("form.mode"), List.of(Mode.values()), StepStart::words);
        form.requestLayout();
    }

    private void makeLoad(FormSection form) {
        channels = form.integer("channels", TEXTS.text("form.channels"), 1, MOST_CHANNELS);
        load = form.quantity("load", TEXTS.text("form.load"), Measure.of(Unit.OHM));
        power = form.quantity("power", TEXTS.text("form.power"), Measure.of(Unit.WATT));
        form.requestLayout();
    }

    private void makeSignal(FormSection form) {
        heading(form, TEXTS.text("form.signals"));
        signal = form.choice("signal", TEXTS.text("form.signal"), List.of(StepSignal.values()), StepSignal::words);
        burstOn = form.quantity("burstOn", TEXTS.text("form.burstOn"), Measure.milli(Unit.SECOND));
        burstPeriod = form.quantity("burstPeriod", TEXTS.text("form.burstPeriod"), Measure.milli(Unit.SECOND));
        form.requestLayout();
    }

    private void makeLength(FormSection form) {
        burstLow = form.quantity("burstLow", TEXTS.text("form.burstLow"), Measure.of(Unit.DECIBEL));
        crest = form.quantity("crest", TEXTS.text("form.crest"), Measure.of(Unit.DECIBEL));
        seconds = form.quantity("seconds", TEXTS.text("form.seconds"), Measure.of(Unit.SECOND));
        form.requestLayout();
    }

    private void makeAmplifier(FormSection form) {
        heading(form, TEXTS.text("form.amplifier"));
        kind = form.choice("class", TEXTS.text("form.class"), List.of(OutputClass.values()), HeatWords::of);
        efficiency = new RangeField(form, "efficiency", TEXTS.text("form.efficiency"), Measure.percentOfOne());
        input = form.optionalQuantity("input", TEXTS.text("form.input"), Measure.of(Unit.WATT));
        air = form.quantity("air", TEXTS.text("form.air"), Measure.of(Unit.CELSIUS));
        form.requestLayout();
    }

    /** A heading within the section, so that the columns of all fields are in line. */
    private static void heading(FormSection section, String words) {
        Label heading = section.note(words);
        heading.setForeground(null);
        heading.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        ((GridData) heading.getLayoutData()).verticalIndent = Spacing.GAP;
    }

    private void hints() {
        supply.setHint(TEXTS.text("form.supply.hint"));
        channels.setHint(TEXTS.text("form.channels.hint"));
        power.setHint(TEXTS.text("form.power.hint"));
        crest.setHint(TEXTS.text("form.crest.hint"));
        seconds.setHint(TEXTS.text("form.seconds.hint"));
        efficiency.setHint(TEXTS.text("form.efficiency.hint"));
        input.setHint(TEXTS.text("form.input.hint"));
    }

    private void checks() {
        for (QuantityField each : List.of(supply, load, power, burstOn, burstPeriod, seconds)) {
            each.check(value -> HeatBindings.require(value > 0, TEXTS.text("check.isAbove")));
        }
        burstOn.check(value -> HeatBindings.require(
                value > 0 && value < burstPeriod.value().orElse(Double.MAX_VALUE), TEXTS.text("form.burstOn.check")));
        burstPeriod.check(value ->
                HeatBindings.require(value > burstOn.value().orElse(0.0), TEXTS.text("form.burstPeriod.check")));
        burstLow.check(
                value -> HeatBindings.require(value >= LOWEST_DB && value <= 0, TEXTS.text("form.burstLow.check")));
        crest.check(value -> HeatBindings.require(
                value >= LEAST_CREST_DB && value <= MOST_CREST_DB, TEXTS.text("form.crest.check")));
        efficiency.check(
                range -> HeatBindings.require(range.low() > 0 && range.high() <= 1, TEXTS.text("check.upToAll")));
        input.check(HeatBindings.positive());
        air.check(value -> HeatBindings.require(
                value >= COLDEST_CELSIUS && value <= HOTTEST_CELSIUS, TEXTS.text("form.air.check")));
    }

    private void listen() {
        for (QuantityField each : List.of(supply, load, power, burstOn, burstPeriod, burstLow, crest, seconds, air)) {
            each.onCommit(value -> later());
        }
        channels.onCommit(value -> later());
        mode.onCommit(value -> later());
        signal.onCommit(value -> later());
        kind.onCommit(value -> later());
        efficiency.onCommit(value -> later());
        input.onCommit(value -> later());
        step.onCommit(text -> choose(text));
    }

    /** The fields hold what was committed only after their handlers have returned. */
    private void later() {
        getDisplay().asyncExec(() -> {
            if (!isDisposed()) {
                showFitting();
                changed.run();
            }
        });
    }

    private void choose(String text) {
        plan.stream().filter(each -> each.id().equals(text)).findFirst().ifPresentOrElse(chosen, () -> {
            origin.setText("");
            origin.requestLayout();
        });
    }

    private void usual() {
        step.setValue(FREELY);
        supply.setValue(USUAL_VOLTS);
        mode.setValue(Mode.STEREO);
        channels.setValue(2);
        load.setValue(USUAL_OHMS);
        power.setValue(USUAL_WATTS);
        signal.setValue(StepSignal.STEADY);
        burstOn.setValue(USUAL_ON_SECONDS);
        burstPeriod.setValue(USUAL_PERIOD_SECONDS);
        burstLow.setValue(USUAL_LOW_DB);
        crest.setValue(USUAL_CREST_DB);
        seconds.setValue(USUAL_SECONDS);
        kind.setValue(OutputClass.UNKNOWN);
        efficiency.setValue(Optional.empty());
        input.setValue(OptionalDouble.empty());
        air.setValue(USUAL_CELSIUS);
        showFitting();
    }

    /** Shows only the fields that make sense with the mode and the signal. */
    private void showFitting() {
        channels.setVisible(mode.value().filter(Mode.STEREO::equals).isPresent());
        StepSignal now = signal.value().orElse(StepSignal.STEADY);
        burstOn.setVisible(now == StepSignal.BURST);
        burstPeriod.setVisible(now == StepSignal.BURST);
        burstLow.setVisible(now == StepSignal.BURST);
        crest.setVisible(now == StepSignal.PROGRAMME);
    }

    void onChange(Runnable handler) {
        changed = handler;
    }

    void onStep(Consumer<Step> handler) {
        chosen = handler;
    }

    /** Takes what a project says of any step: class, air, length, channels. */
    void setProject(Optional<Project> project) {
        setPlan(project.map(Project::plan).orElse(List.of()));
        project.ifPresent(open -> {
            kind.setValue(open.heat().amplifier().outputClass());
            air.setValue(open.bench().ambientCelsius().orElse(USUAL_CELSIUS));
            seconds.setValue(open.heat().pacing().stepSeconds());
            channels.setValue(open.amplifier().channelCount());
        });
    }

    /** Offers another plan; what is typed stays. */
    void setPlan(List<Step> newPlan) {
        plan = newPlan;
        step.setChoices(entries());
    }

    private List<String> entries() {
        return Stream.concat(Stream.of(FREELY), plan.stream().map(Step::id)).toList();
    }

    void setOutputClass(OutputClass outputClass) {
        kind.setValue(outputClass);
    }

    void setAir(OptionalDouble celsius) {
        celsius.ifPresent(air::setValue);
    }

    void setSeconds(double newSeconds) {
        seconds.setValue(newSeconds);
    }

    /** Puts a step of the plan into the fields. */
    void setStart(StepStart start) {
        Step from = start.step();
        step.setValue(from.id());
        supply.setValue(from.supplyVolts());
        mode.setValue(from.mode());
        start.loadOhms().ifPresent(load::setValue);
        start.powerWatts().ifPresent(power::setValue);
        input.setValue(start.measuredInputWatts());
        efficiency.setValue(Optional.empty());
        if (from.stimulus() instanceof Stimulus.ToneBurst burst) {
            signal.setValue(StepSignal.BURST);
            burstOn.setValue(burst.onSeconds());
            burstPeriod.setValue(burst.periodSeconds());
            burstLow.setValue(burst.lowLevelDb());
        } else {
            signal.setValue(StepSignal.STEADY);
        }
        origin.setText(start.origin());
        origin.requestLayout();
        showFitting();
    }

    /** Returns what the fields hold. */
    StepQuestion question() {
        return new StepQuestion(
                supply.value().orElseThrow(),
                mode.value().orElseThrow(),
                load.value().orElseThrow(),
                channels.value().orElseThrow(),
                power.value().orElseThrow(),
                signal.value().orElseThrow(),
                burstOn.value().orElseThrow(),
                burstPeriod.value().orElseThrow(),
                burstLow.value().orElseThrow(),
                crest.value().orElseThrow(),
                seconds.value().orElseThrow(),
                kind.value().orElseThrow(),
                efficiency.value(),
                input.value().orElse(OptionalDouble.empty()),
                air.value().orElseThrow());
    }

    /** Writes the values anew, which follow the user's decimal sign. */
    void refresh() {
        for (QuantityField each : List.of(supply, load, power, burstOn, burstPeriod, burstLow, crest, seconds, air)) {
            each.value().ifPresent(each::setValue);
        }
        input.value().ifPresent(input::setValue);
        efficiency.setValue(efficiency.value());
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && step.control().setFocus();
    }
}
