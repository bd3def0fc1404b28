// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.signal.ui.internal;

import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.swt.widgets.Text;
import org.ohmstead.model.Severity;
import org.ohmstead.units.QuantityException;
import org.ohmstead.units.QuantityParser;
import org.ohmstead.units.Unit;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.MessageLine;
import org.ohmstead.workbench.look.Spacing;

/** Asks, in the view itself, what full scale of a file of the user's choice stands for and what the load was. */
public final class FileBar extends Composite {
    private static final int FIELD_WIDTH = 76;
    private static final int COLUMNS = 7;

    private final Label name;
    private final Text fullScale;
    private final Text load;
    private final MessageLine message;
    private final Consumer<CaptureOrder> wanted;
    private Path file;

    /**
     * Makes a hidden bar.
     *
     * @param wanted called with what is to be read
     * @param closed called when the user wants the log again
     */
    public FileBar(Composite parent, Consumer<CaptureOrder> wanted, Runnable closed) {
        super(parent, SWT.NONE);
        this.wanted = wanted;
        Spacing.group(COLUMNS).applyTo(this);
        name = Ids.name(new Label(this, SWT.NONE), "capture.file.name");
        GridDataFactory.fillDefaults()
                .align(SWT.FILL, SWT.CENTER)
                .grab(true, false)
                .applyTo(name);
        fullScale = field(Texts.say("file.fullScale"), "capture.file.full-scale", Texts.say("file.fullScale.example"));
        fullScale.setToolTipText(Texts.say("file.fullScale.hint"));
        load = field(Texts.say("file.load"), "capture.file.load", Texts.say("file.load.example"));
        load.setToolTipText(Texts.say("file.load.hint"));
        Button read = Ids.name(new Button(this, SWT.PUSH), "capture.file.read");
        read.setText(Texts.say("file.read"));
        read.addListener(SWT.Selection, event -> read());
        Button close = Ids.name(new Button(this, SWT.PUSH), "capture.file.close");
        close.setText(Texts.say("file.close"));
        close.addListener(SWT.Selection, event -> closed.run());
        message = new MessageLine(this, "capture.file.message");
        GridDataFactory.fillDefaults()
                .span(COLUMNS, 1)
                .grab(true, false)
                .exclude(true)
                .applyTo(message);
    }

    private Text field(String caption, String id, String hint) {
        Label label = new Label(this, SWT.NONE);
        label.setText(caption);
        Text text = Ids.name(new Text(this, SWT.BORDER | SWT.SINGLE | SWT.RIGHT), id);
        text.setMessage(hint);
        GridDataFactory.swtDefaults().hint(FIELD_WIDTH, SWT.DEFAULT).applyTo(text);
        text.addListener(SWT.DefaultSelection, event -> read());
        return text;
    }

    /** Asks for what must be known of a file. */
    public void ask(Path newFile) {
        file = newFile;
        name.setText(String.valueOf(newFile.getFileName()));
        name.setToolTipText(newFile.toString());
        tell("");
        fullScale.setFocus();
        fullScale.selectAll();
    }

    private void read() {
        if (file == null) {
            return;
        }
        double volts;
        try {
            volts = QuantityParser.parse(fullScale.getText(), Unit.VOLT).value();
        } catch (QuantityException e) {
            refuse(fullScale, Texts.say("file.fullScale.refused", e.getMessage()));
            return;
        }
        OptionalDouble ohms = OptionalDouble.empty();
        try {
            if (!load.getText().isBlank()) {
                ohms = OptionalDouble.of(
                        QuantityParser.parse(load.getText(), Unit.OHM).value());
            }
        } catch (QuantityException e) {
            refuse(load, Texts.say("file.load.refused", e.getMessage()));
            return;
        }
        if (!(volts > 0)) {
            refuse(fullScale, Texts.say("file.fullScale.positive"));
        } else if (ohms.isPresent() && !(ohms.getAsDouble() > 0)) {
            refuse(load, Texts.say("file.load.positive"));
        } else {
            tell("");
            wanted.accept(CaptureOrder.file(file, volts, ohms));
        }
    }

    private void refuse(Text field, String sentence) {
        tell(sentence);
        field.setFocus();
        field.selectAll();
    }

    private void tell(String sentence) {
        if (sentence.isEmpty()) {
            message.clear();
        } else {
            message.show(Severity.ERROR, sentence);
        }
        ((GridData) message.getLayoutData()).exclude = sentence.isEmpty();
        message.setVisible(!sentence.isEmpty());
        requestLayout();
    }
}
