// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.gain;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Mode;
import org.ohmstead.model.Rating;
import org.ohmstead.signal.gain.GainTarget;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.CheckField;
import org.ohmstead.workbench.form.ChoiceField;
import org.ohmstead.workbench.form.Field;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.form.QuantityField;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;

/** The fields of {@link GainInputs}. */
final class GainForm extends Composite {
    private static final double WIDEST_OVERLAP_DB = 60;
    private static final double LOWEST_CHECK_DB = -100;
    private static final int FIELD_WIDTH = 104;

    private final Messages messages;
    private final String freely;
    private QuantityField fullScale;
    private Label origin;
    private QuantityField overlap;
    private ChoiceField<String> rating;
    private QuantityField power;
    private QuantityField load;
    private CheckField bridged;
    private OptionalQuantityField clip;
    private QuantityField check;
    private OptionalQuantityField reads;
    private List<Rating> ratings = List.of();
    private FormSection fields;
    private Runnable changed = () -> {};
    private Runnable refused = () -> {};
    private boolean fullScaleTyped;

    /** Makes the form and has its fields made later; nothing else may be asked of it until then. */
    GainForm(Composite parent, Messages messages, Slices building) {
        super(parent, SWT.NONE);
        this.messages = messages;
        freely = messages.text("view.rating.free");
        Spacing.group(1).applyTo(this);
        FormSection form = new FormSection(this, "gain", messages.text("view.source"));
        fields = form;
        GridDataFactory.fillDefaults().grab(true, false).applyTo(form);
        building.add(() -> makeSource(form));
        building.add(() -> makeEndPoint(form));
        building.add(() -> makeLow(form));
        building.add(() -> {
            listen();
            lookForRefusals();
            usual();
        });
    }

    private void makeSource(FormSection form) {
        fullScale = form.quantity("fullScale", messages.text("view.fullScale"), Measure.of(Unit.VOLT));
        fullScale.setHint(messages.text("view.fullScale.hint"));
        fullScale.check(this::positive);
        origin = Ids.name(form.note(""), "gain.origin");
        ((GridData) origin.getLayoutData()).exclude = true;
        origin.setVisible(false);
        overlap = form.quantity("overlap", messages.text("view.overlap"), Measure.of(Unit.DECIBEL));
        overlap.setHint(messages.text("view.overlap.hint"));
        overlap.check(
                value -> require(value >= -WIDEST_OVERLAP_DB && value <= WIDEST_OVERLAP_DB, "view.withinOverlap"));
        form.requestLayout();
    }

    private void makeEndPoint(FormSection form) {
        heading(form, messages.text("view.endPoint"));
        rating = form.choice("rating", messages.text("view.rating"), List.of(freely), text -> text);
        power = form.quantity("power", messages.text("view.power"), Measure.of(Unit.WATT));
        power.check(this::positive);
        load = form.quantity("load", messages.text("view.load"), Measure.of(Unit.OHM));
        load.check(this::positive);
        bridged = form.check("bridged", messages.text("view.bridged"));
        bridged.setHint(messages.text("view.bridged.hint"));
        clip = form.optionalQuantity("clip", messages.text("view.clip"), Measure.of(Unit.WATT));
        clip.setHint(messages.text("view.clip.hint"));
        clip.check(value -> value.ifPresent(this::positive));
        form.requestLayout();
    }

    private void makeLow(FormSection form) {
        heading(form, messages.text("view.low"));
        check = form.quantity("check", messages.text("view.check"), Measure.of(Unit.DECIBEL));
        check.setHint(messages.text("view.check.hint"));
        check.check(value -> require(value >= LOWEST_CHECK_DB && value <= 0, "view.withinCheck"));
        reads = form.optionalQuantity("reads", messages.text("view.reads"), Measure.of(Unit.VOLT));
        reads.setHint(messages.text("view.reads.hint"));
        reads.check(value -> value.ifPresent(this::positive));
        form.fields().forEach(field -> {
            if (field != bridged) {
                ((GridData) field.control().getLayoutData()).widthHint = FIELD_WIDTH;
            }
        });
        form.requestLayout();
    }

    /** A heading within the section, so that the columns of all fields are in line. */
    private static void heading(FormSection section, String words) {
        Label heading = section.note(words);
        heading.setForeground(null);
        heading.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        ((GridData) heading.getLayoutData()).verticalIndent = Spacing.GAP;
    }

    private void positive(double value) {
        require(value > 0, "view.positive");
    }

    private void require(boolean well, String key) {
        if (!well) {
            throw new IllegalArgumentException(messages.text(key));
        }
    }

    private void listen() {
        fullScale.onCommit(value -> {
            fullScaleTyped = true;
            sayOrigin("");
            later();
        });
        for (QuantityField each : List.of(overlap, check)) {
            each.onCommit(value -> later());
        }
        for (QuantityField each : List.of(power, load)) {
            each.onCommit(value -> typedFreely());
        }
        bridged.onCommit(value -> typedFreely());
        clip.onCommit(value -> later());
        rating.onCommit(text -> ratings.stream()
                .filter(each -> each.id().equals(text))
                .findFirst()
                .ifPresentOrElse(this::take, this::later));
    }

    private void typedFreely() {
        rating.setValue(freely);
        later();
    }

    /** The fields hold what was committed only after their handlers have returned. */
    private void later() {
        getDisplay().asyncExec(() -> {
            if (!isDisposed()) {
                changed.run();
            }
        });
    }

    private void usual() {
        GainInputs usual = GainInputs.USUAL;
        fullScale.setValue(usual.fullScaleVoltsRms());
        overlap.setValue(usual.overlapDb());
        power.setValue(usual.target().powerWatts());
        load.setValue(usual.target().loadOhms());
        bridged.setValue(usual.target().bridged());
        clip.setValue(usual.clipWatts());
        check.setValue(usual.checkDb());
        reads.setValue(OptionalDouble.empty());
        rating.setValue(freely);
        setRatings(List.of());
    }

    void onChange(Runnable handler) {
        changed = handler;
    }

    /** Has somebody told when a field may have refused what was typed, or taken it after all. */
    void onRefusal(Runnable handler) {
        refused = handler;
    }

    /** Returns the first thing that is wrong with what is typed, with the name of its field. */
    Optional<String> problem() {
        return fields.firstProblem().flatMap(field -> field.problem().map(what -> field.name() + ": " + what));
    }

    private void lookForRefusals() {
        Runnable look = () -> {
            if (!isDisposed()) {
                refused.run();
            }
        };
        for (Field<?> field : fields.fields()) {
            for (int event : new int[] {SWT.FocusOut, SWT.DefaultSelection}) {
                field.control().addListener(event, told -> getDisplay().asyncExec(look));
            }
        }
    }

    /** Offers other ratings; what is typed stays, and a chosen one that changed is taken anew. */
    void setRatings(List<Rating> newRatings) {
        ratings = List.copyOf(newRatings);
        rating.setChoices(Stream.concat(Stream.of(freely), ratings.stream().map(Rating::id))
                .toList());
        rating.setHint(messages.text(ratings.isEmpty() ? "view.rating.none" : "view.rating.hint"));
        String chosen = rating.value().orElse(freely);
        if (!chosen.equals(freely)) {
            ratings.stream()
                    .filter(each -> each.id().equals(chosen))
                    .findFirst()
                    .ifPresentOrElse(this::take, () -> rating.setValue(freely));
        }
    }

    /** Puts the first rating into the fields, if there is one. */
    void takeFirstRating() {
        ratings.stream().findFirst().ifPresentOrElse(this::take, () -> rating.setValue(freely));
    }

    private void take(Rating chosen) {
        rating.setValue(chosen.id());
        power.setValue(chosen.powerWatts());
        load.setValue(chosen.loadOhms());
        bridged.setValue(chosen.mode() == Mode.BRIDGED);
        clip.setValue(OptionalDouble.empty());
        later();
    }

    /** Takes the volts of a bench's source, unless the user has typed others for this project. */
    void offerFullScale(Optional<LogFacts.Found<Double>> found) {
        if (!fullScaleTyped && found.isPresent()) {
            fullScale.setValue(found.get().fact());
            sayOrigin(messages.text("view.fullScale.origin", found.get().entryId()));
        }
    }

    /** Another project is there: what was typed of the source of the last one no longer goes before its log. */
    void forgetTyping() {
        fullScaleTyped = false;
        sayOrigin("");
    }

    private void sayOrigin(String words) {
        ((GridData) origin.getLayoutData()).exclude = words.isEmpty();
        origin.setVisible(!words.isEmpty());
        if (!words.equals(origin.getText())) {
            origin.setText(words);
            origin.requestLayout();
        }
    }

    /** Puts the values of an earlier session in place. */
    void restore(double fullScaleVoltsRms, double overlapDb) {
        fullScale.setValue(fullScaleVoltsRms);
        overlap.setValue(overlapDb);
    }

    /** Returns what the fields hold. */
    GainInputs inputs() {
        return new GainInputs(
                fullScale.value().orElseThrow(),
                overlap.value().orElseThrow(),
                new GainTarget(
                        power.value().orElseThrow(),
                        load.value().orElseThrow(),
                        bridged.value().orElseThrow()),
                clip.value().orElse(OptionalDouble.empty()),
                check.value().orElseThrow());
    }

    /** Writes the values anew, which follow the user's decimal sign. */
    void refresh() {
        for (QuantityField each : List.of(fullScale, overlap, power, load, check)) {
            each.value().ifPresent(each::setValue);
        }
        clip.value().ifPresent(clip::setValue);
        reads.value().ifPresent(reads::setValue);
    }

    /** Returns the text of the meter's reading, which counts while it is typed. */
    Text readsText() {
        return (Text) reads.control();
    }

    @Override
    public boolean setFocus() {
        return !isDisposed() && fullScale.control().setFocus();
    }
}
