// Copyright 2026 the Ohmstead authors.
// SPDX-License-Identifier: Apache-2.0

package org.ohmstead.workbench.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.resource.JFaceResources;
import org.eclipse.swt.SWT;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.ohmstead.workbench.look.Ids;
import org.ohmstead.workbench.look.Spacing;
import org.ohmstead.workbench.look.Tones;

/** A heading with labelled fields below it in aligned columns: label, field, unit, message. */
public final class FormSection extends Composite {
    static final int COLUMNS = 4;
    static final int LEAST_WIDE = 240;

    private final String id;
    private final Composite grid;
    private final List<Field<?>> fields = new ArrayList<>();

    /**
     * Makes a section without fields.
     *
     * @param parent where it stands; the caller gives it layout data
     * @param id the beginning of its fields' names, such as "supply"
     * @param heading a word or two; empty for none
     */
    public FormSection(Composite parent, String id, String heading) {
        super(parent, SWT.NONE);
        this.id = id;
        Spacing.group(1).applyTo(this);
        if (!heading.isEmpty()) {
            Label title = Ids.name(new Label(this, SWT.NONE), id + ".heading");
            title.setText(heading);
            title.setFont(JFaceResources.getFontRegistry().getBold(JFaceResources.DEFAULT_FONT));
            GridDataFactory.fillDefaults().grab(true, false).applyTo(title);
        }
        grid = new Composite(this, SWT.NONE);
        Spacing.group(COLUMNS).spacing(Spacing.GAP, Spacing.TIGHT).applyTo(grid);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(grid);
    }

    /** Returns the beginning of its fields' names. */
    public String id() {
        return id;
    }

    /** Returns the fields in the order in which they were added. */
    public List<Field<?>> fields() {
        return List.copyOf(fields);
    }

    /** Lets the user change the values or not. */
    public void setReadOnly(boolean readOnly) {
        fields.forEach(field -> field.setReadOnly(readOnly));
    }

    /** Adds a paragraph of explanation that spans the section. */
    public Label note(String text) {
        Label note = new Label(grid, SWT.WRAP);
        note.setText(text);
        note.setForeground(Tones.of(this).mutedText());
        GridDataFactory.fillDefaults()
                .span(COLUMNS, 1)
                .grab(true, false)
                .hint(LEAST_WIDE, SWT.DEFAULT)
                .applyTo(note);
        return note;
    }

    /** Adds a quantity that must be there. */
    public QuantityField quantity(String fieldId, String label, Measure measure) {
        return new QuantityField(this, fieldId, label, measure);
    }

    /** Adds a quantity that may be left empty. */
    public OptionalQuantityField optionalQuantity(String fieldId, String label, Measure measure) {
        return new OptionalQuantityField(this, fieldId, label, measure);
    }

    /** Adds a ratio that is written in percent. */
    public PercentField percent(String fieldId, String label) {
        return new PercentField(this, fieldId, label);
    }

    /** Adds a whole number between two bounds, both allowed. */
    public IntegerField integer(String fieldId, String label, int lowest, int highest) {
        return new IntegerField(this, fieldId, label, lowest, highest);
    }

    /** Adds a day that may be left empty. */
    public DateField date(String fieldId, String label) {
        return new DateField(this, fieldId, label);
    }

    /** Adds a line of text that may be empty. */
    public TextField text(String fieldId, String label) {
        return new TextField(this, fieldId, label, false);
    }

    /** Adds a line of text that must not be empty. */
    public TextField requiredText(String fieldId, String label) {
        return new TextField(this, fieldId, label, true);
    }

    /** Adds a short text that must not be empty. */
    public WordField word(String fieldId, String label) {
        return new WordField(this, fieldId, label);
    }

    /** Adds a text of several lines that may be empty. */
    public TextField lines(String fieldId, String label) {
        return new TextField(this, fieldId, label, false, true);
    }

    /** Adds a choice from a list. */
    public <E> ChoiceField<E> choice(String fieldId, String label, List<E> choices, Function<E, String> words) {
        return new ChoiceField<>(this, fieldId, label, choices, words);
    }

    /** Adds a yes or no. */
    public CheckField check(String fieldId, String label) {
        return new CheckField(this, fieldId, label);
    }

    /** Returns the first field with something wrong, or empty. */
    public Optional<Field<?>> firstProblem() {
        return fields.stream().filter(field -> field.problem().isPresent()).findFirst();
    }

    Composite grid() {
        return grid;
    }

    void add(Field<?> field) {
        fields.add(field);
    }
}
