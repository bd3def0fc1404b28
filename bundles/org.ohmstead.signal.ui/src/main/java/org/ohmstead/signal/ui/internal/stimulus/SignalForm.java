// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal.stimulus;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.eclipse.jface.fieldassist.ControlDecoration;
import org.eclipse.jface.fieldassist.FieldDecorationRegistry;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Combo;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Control;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Severity;
import org.ohmstead.signal.SampleFormat;
import org.ohmstead.signal.stimulus.ChannelUse;
import org.ohmstead.signal.stimulus.SignalKind;
import org.ohmstead.signal.stimulus.SignalSetting;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Numbers;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** The kind of signal, its settings, and how a file of it is stored; tells of every change while one types. */
final class SignalForm extends Composite {
    private static final int SETTLED_MILLIS = 200;
    private static final int FIELD_WIDTH = 110;
    private static final int NOTE_WIDTH = 160;
    private static final Set<String> IN_MILLISECONDS = Set.of("on", "period", "fade-in", "fade-out");
    private static final Pattern BARE = Pattern.compile("[+-]?[\\d.,]+");
    private static final List<Integer> RATES = List.of(44_100, 48_000, 88_200, 96_000, 192_000);

    private final Messages messages;
    private final Runnable changed;
    private final Combo kind;
    private final Label purpose;
    private final Composite rows;
    private final MessageLine refusal;
    private Combo rate;
    private Combo format;
    private Combo channels;
    private Button wholeCycles;
    private Button marked;
    private final Map<String, Text> fields = new LinkedHashMap<>();
    private final Map<String, ControlDecoration> flaws = new LinkedHashMap<>();
    /** What was typed for a kind, for when the user comes back to it. */
    private final Map<SignalKind, Map<String, String>> kept = new LinkedHashMap<>();

    private SignalKind shown = SignalKind.SINE;
    private long newest;

    /**
     * Makes the form with the choice of signals; {@link #makeFile} and {@link #makeSettings} make the rest, each in a turn of its own.
     *
     * @param changed called when what it says has changed and nothing more was typed for a moment
     */
    SignalForm(Composite parent, Messages messages, Runnable changed) {
        super(parent, SWT.NONE);
        this.messages = messages;
        this.changed = changed;
        Spacing.group(1).applyTo(this);
        kind = named(grid(), "form.kind", "signals.kind", List.of(SignalKind.values()), SignalKind::label);
        kind.addListener(SWT.Selection, event -> chooseKind());
        purpose = Ids.name(new Label(this, SWT.WRAP), "signals.purpose");
        purpose.setForeground(Tones.of(this).mutedText());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(NOTE_WIDTH, SWT.DEFAULT)
                .applyTo(purpose);
        rows = new Composite(this, SWT.NONE);
        Spacing.group(3).spacing(Spacing.GAP, Spacing.TIGHT).applyTo(rows);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(rows);
        refusal = new MessageLine(this, "signals.refusal");
        GridDataFactory.fillDefaults().grab(true, false).applyTo(refusal);
    }

    /** Makes the part that says how a file of it is stored. */
    void makeFile() {
        Label heading = new Label(this, SWT.NONE);
        heading.setText(messages.text("form.file"));
        heading.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
        Composite file = grid();
        rate = named(file, "form.rate", "signals.rate", RATES, each -> messages.text("form.rate.words", each));
        rate.select(RATES.indexOf(48_000));
        format = named(file, "form.samples", "signals.samples", List.of(SampleFormat.values()), this::words);
        format.select(SampleFormat.INTEGER_24.ordinal());
        channels = named(file, "form.channels", "signals.channels", List.of(ChannelUse.values()), this::words);
        channels.select(ChannelUse.BOTH.ordinal());
        for (Combo each : List.of(rate, format, channels)) {
            each.addListener(SWT.Selection, event -> soon());
        }
        wholeCycles = check("form.whole", "signals.whole-cycles");
        wholeCycles.setSelection(true);
        marked = check("form.marked", "signals.marked");
        heading.requestLayout();
    }

    /** Makes the settings of a usual sine. */
    void makeSettings() {
        makeRows();
    }

    private Composite grid() {
        Composite grid = new Composite(this, SWT.NONE);
        Spacing.group(2).spacing(Spacing.GAP, Spacing.TIGHT).applyTo(grid);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(grid);
        return grid;
    }

    private <E> Combo named(Composite grid, String text, String id, List<E> choices, Function<E, String> words) {
        Label label = new Label(grid, SWT.NONE);
        label.setText(messages.text(text));
        GridDataFactory.swtDefaults().applyTo(label);
        Combo combo = Ids.name(new Combo(grid, SWT.READ_ONLY | SWT.DROP_DOWN), id);
        combo.setItems(choices.stream().map(words).toArray(String[]::new));
        combo.select(0);
        combo.setVisibleItemCount(choices.size());
        combo.addListener(SWT.MouseVerticalWheel, event -> event.doit = false);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(combo);
        return combo;
    }

    private Button check(String text, String id) {
        Button button = Ids.name(new Button(this, SWT.CHECK), id);
        button.setText(messages.text(text));
        button.setToolTipText(messages.text(text + ".hint"));
        button.addListener(SWT.Selection, event -> soon());
        return button;
    }

    private String words(SampleFormat each) {
        return messages.text("samples." + each.name());
    }

    private String words(ChannelUse each) {
        return messages.text("channels." + each.name());
    }

    private void chooseKind() {
        kept.put(shown, texts());
        shown = SignalKind.values()[kind.getSelectionIndex()];
        makeRows();
        soon();
    }

    private void makeRows() {
        List.of(rows.getChildren()).forEach(Control::dispose);
        fields.clear();
        flaws.clear();
        Map<String, String> earlier = kept.getOrDefault(shown, Map.of());
        for (SignalSetting setting : shown.settings()) {
            makeRow(setting, earlier.getOrDefault(setting.id(), usual(setting)));
        }
        purpose.setText(shown.purpose());
        purpose.requestLayout();
        rows.requestLayout();
    }

    /** The usual value in the unit that stands behind the field, with the user's decimal sign. */
    private static String usual(SignalSetting setting) {
        boolean number =
                setting.form() == SignalSetting.Form.QUANTITY || setting.form() == SignalSetting.Form.OPTIONAL_QUANTITY;
        if (!number) {
            return setting.usual();
        }
        double value = Measure.of(setting.unit()).read(setting.usual());
        return Numbers.localised(measure(setting).exact(value));
    }

    private static Measure measure(SignalSetting setting) {
        return IN_MILLISECONDS.contains(setting.id()) ? Measure.milli(Unit.SECOND) : Measure.of(setting.unit());
    }

    private void makeRow(SignalSetting setting, String text) {
        Label label = new Label(rows, SWT.NONE);
        label.setText(setting.label());
        label.setToolTipText(setting.hint());
        GridDataFactory.swtDefaults().indent(Spacing.TIGHT, 0).applyTo(label);
        boolean list = setting.form() == SignalSetting.Form.TONES;
        Text field = Ids.name(
                new Text(rows, SWT.BORDER | SWT.SINGLE | (list ? SWT.LEFT : SWT.RIGHT)), "signals." + setting.id());
        field.setText(text);
        field.setToolTipText(setting.hint());
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(FIELD_WIDTH, SWT.DEFAULT)
                .indent(Spacing.GAP, 0)
                .applyTo(field);
        field.addListener(SWT.Modify, event -> soon());
        Label unit = new Label(rows, SWT.NONE);
        unit.setText(unit(setting));
        ControlDecoration flaw = new ControlDecoration(field, SWT.LEFT | SWT.TOP);
        flaw.setImage(FieldDecorationRegistry.getDefault()
                .getFieldDecoration(FieldDecorationRegistry.DEC_ERROR)
                .getImage());
        flaw.hide();
        fields.put(setting.id(), field);
        flaws.put(setting.id(), flaw);
    }

    private static String unit(SignalSetting setting) {
        return setting.id().endsWith("level") ? "dBFS" : measure(setting).symbol();
    }

    private void soon() {
        newest++;
        long number = newest;
        getDisplay().timerExec(SETTLED_MILLIS, () -> {
            if (number == newest && !isDisposed()) {
                changed.run();
            }
        });
    }

    private Map<String, String> texts() {
        Map<String, String> texts = new LinkedHashMap<>();
        fields.forEach((id, field) -> texts.put(id, field.getText()));
        return texts;
    }

    /** Returns what it says now. */
    SignalChoice choice() {
        Map<String, String> texts = texts();
        // A bare number means the unit behind the field.
        texts.replaceAll((id, text) ->
                IN_MILLISECONDS.contains(id) && BARE.matcher(text.strip()).matches() ? text.strip() + " ms" : text);
        return new SignalChoice(
                shown,
                texts,
                RATES.get(rate.getSelectionIndex()),
                SampleFormat.values()[format.getSelectionIndex()],
                ChannelUse.values()[channels.getSelectionIndex()],
                wholeCycles.getSelection(),
                marked.getSelection());
    }

    /** Marks the setting that is to blame and says why; none of it when both are empty. */
    void refuse(String settingId, String sentence) {
        flaws.forEach((id, flaw) -> {
            if (id.equals(settingId)) {
                flaw.setDescriptionText(sentence);
                flaw.show();
            } else {
                flaw.hide();
            }
        });
        if (sentence.isEmpty()) {
            refusal.clear();
        } else {
            refusal.show(Severity.ERROR, sentence);
        }
    }

    @Override
    public boolean setFocus() {
        return kind.setFocus();
    }
}
