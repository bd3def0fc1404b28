// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.load.ui.internal;

import java.util.Optional;
import java.util.OptionalDouble;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.load.Network;
import org.ohmstead.load.NetworkImpedance;
import org.ohmstead.plot.ui.ChartCanvas;
import org.ohmstead.plot.ui.PlotSource;
import org.ohmstead.plot.ui.ReadOutStyle;
import org.ohmstead.units.Unit;
import org.ohmstead.units.text.Messages;
import org.ohmstead.workbench.form.FormSection;
import org.ohmstead.workbench.form.Measure;
import org.ohmstead.workbench.form.OptionalQuantityField;
import org.ohmstead.workbench.form.TextField;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Slices;
import org.ohmstead.workbench.look.Spacing;

/** Magnitude and phase of a network over frequency, alone or behind leads, and what follows from them. */
final class ImpedancePane extends Composite {
    private static final Messages TEXTS = Messages.of(ImpedancePane.class);

    private static final int[] MAGNITUDE_AND_PHASE = {58, 42};
    private static final double LONGEST_METRES = 1000;
    private static final int LEAST_WIDE = 100;
    private static final int ENTRY_WIDE = 90;

    private final ChartCanvas magnitude;
    private final Label words;
    private ChartCanvas phase;
    private TextField section;
    private OptionalQuantityField length;
    private OptionalDouble squareMillimetres = OptionalDouble.empty();
    private OptionalDouble metres = OptionalDouble.empty();
    private Optional<Network> network = Optional.empty();

    /** Makes the pane and has its other parts made later; nothing else may be asked of it until then. */
    ImpedancePane(Composite parent, Slices building) {
        super(parent, SWT.NONE);
        Spacing.tight(1).applyTo(this);
        Composite leads = new Composite(this, SWT.NONE);
        Spacing.group(2).applyTo(leads);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(leads);
        SashForm charts = new SashForm(this, SWT.HORIZONTAL | SWT.SMOOTH);
        charts.setSashWidth(Spacing.TIGHT);
        GridDataFactory.fillDefaults().grab(true, true).hint(1, 1).applyTo(charts);
        magnitude = Ids.name(new ChartCanvas(charts, SWT.BORDER), "design.impedance");
        Composite right = Panes.filled(charts);
        charts.setWeights(MAGNITUDE_AND_PHASE);
        words = Ids.name(new Label(this, SWT.WRAP), "design.impedance.words");
        GridDataFactory.fillDefaults()
                .grab(true, false)
                .hint(LEAST_WIDE, SWT.DEFAULT)
                .applyTo(words);
        building.add(() -> makePhase(right));
        building.add(() -> makeLeads(leads));
    }

    private void makePhase(Composite parent) {
        phase = Ids.name(new ChartCanvas(parent, SWT.BORDER), "design.phase");
        phase.requestLayout();
    }

    private void makeLeads(Composite parent) {
        section = new FormSection(parent, "design", "").text("leadSection", TEXTS.text("impedance.section"));
        section.setHint(TEXTS.text("impedance.sectionHint"));
        ((GridData) section.control().getLayoutData()).widthHint = ENTRY_WIDE;
        section.check(LeadPair::readSquareMillimetres);
        section.onCommit(text -> {
            squareMillimetres = LeadPair.readSquareMillimetres(text);
            draw();
        });
        length = new FormSection(parent, "design", "")
                .optionalQuantity("leadLength", TEXTS.text("impedance.length"), Measure.of(Unit.METRE));
        length.setHint(TEXTS.text("impedance.lengthHint"));
        length.check(value -> value.ifPresent(ImpedancePane::refuseNoLength));
        length.onCommit(value -> {
            metres = value;
            draw();
        });
        parent.requestLayout();
    }

    private static void refuseNoLength(double value) {
        if (!(value > 0 && value <= LONGEST_METRES)) {
            throw new IllegalArgumentException(TEXTS.text("impedance.mustLength"));
        }
    }

    void style(ReadOutStyle style) {
        magnitude.setReadOutStyle(style);
        phase.setReadOutStyle(style);
        length.setValue(metres);
        draw();
    }

    /** Shows a network, behind the leads when they are named. */
    void show(Network newNetwork) {
        network = Optional.of(newNetwork);
        draw();
    }

    /** Shows nothing but what to do next. */
    void clear(String sentence) {
        network = Optional.empty();
        magnitude.showMessage(sentence);
        phase.showMessage("");
        say("");
    }

    private void draw() {
        if (network.isEmpty()) {
            return;
        }
        Optional<LeadPair> leads = squareMillimetres.isPresent() && metres.isPresent()
                ? Optional.of(new LeadPair(squareMillimetres.getAsDouble(), metres.getAsDouble()))
                : Optional.empty();
        NetworkImpedance seen =
                leads.map(pair -> pair.before(network.get())).orElseGet(() -> NetworkImpedance.of(network.get()));
        magnitude.show(PlotSource.of(ImpedancePlot.magnitude(seen)), false);
        phase.show(PlotSource.of(ImpedancePlot.phase(seen)), false);
        say(ImpedancePlot.note(seen, leads.isPresent())
                + leads.map(pair -> " " + pair.words(network.get().ohms())).orElse(""));
    }

    private void say(String sentence) {
        if (!words.getText().equals(sentence)) {
            words.setText(sentence);
            words.requestLayout();
        }
    }
}
