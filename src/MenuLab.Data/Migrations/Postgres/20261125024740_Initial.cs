using System;
using MenuLab.Data.Freezing;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace MenuLab.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "compositions",
                columns: table => new
                {
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    body = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_compositions", x => x.hash);
                });

            migrationBuilder.CreateTable(
                name: "house_settings",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    first_unit = table.Column<string>(type: "text", nullable: false),
                    temperature_scale = table.Column<string>(type: "text", nullable: false),
                    paper = table.Column<string>(type: "text", nullable: false),
                    measures_set = table.Column<int>(type: "integer", nullable: false),
                    public_address = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true),
                    shipped_edition = table.Column<int>(type: "integer", nullable: false),
                    last_instant = table.Column<long>(type: "bigint", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_house_settings", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    initials = table.Column<string>(type: "character varying(4)", maxLength: 4, nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    erased_at = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "sites",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    time_zone = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    day_turn = table.Column<string>(type: "text", nullable: false),
                    currency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: false),
                    jurisdiction = table.Column<string>(type: "character varying(16)", maxLength: 16, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sites", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "drafts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    search_name = table.Column<string>(type: "text", nullable: false),
                    style = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: true),
                    standing = table.Column<string>(type: "text", nullable: false),
                    standing_reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    brief = table.Column<byte[]>(type: "bytea", nullable: false),
                    made_by = table.Column<Guid>(type: "uuid", nullable: false),
                    made_at = table.Column<long>(type: "bigint", nullable: false),
                    changed_at = table.Column<long>(type: "bigint", nullable: false),
                    archived_at = table.Column<long>(type: "bigint", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_drafts", x => x.id);
                    table.ForeignKey(
                        name: "fk_drafts_people_made_by",
                        column: x => x.made_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ingredients",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    key = table.Column<string>(type: "text", nullable: true),
                    name = table.Column<string>(type: "text", nullable: false),
                    search_name = table.Column<string>(type: "text", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    basis = table.Column<string>(type: "text", nullable: false),
                    is_carbonated = table.Column<bool>(type: "boolean", nullable: false),
                    has_raw_egg = table.Column<bool>(type: "boolean", nullable: false),
                    kept_at_c = table.Column<double>(type: "double precision", nullable: false),
                    note = table.Column<string>(type: "text", nullable: false),
                    archived_at = table.Column<long>(type: "bigint", nullable: true),
                    archived_by = table.Column<Guid>(type: "uuid", nullable: true),
                    merged_into = table.Column<Guid>(type: "uuid", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ingredients", x => x.id);
                    table.ForeignKey(
                        name: "fk_ingredients_ingredients_merged_into",
                        column: x => x.merged_into,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_ingredients_people_archived_by",
                        column: x => x.archived_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "record",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    who = table.Column<Guid>(type: "uuid", nullable: false),
                    what = table.Column<string>(type: "text", nullable: false),
                    on_table = table.Column<string>(type: "text", nullable: false),
                    on_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false),
                    before = table.Column<byte[]>(type: "bytea", nullable: true),
                    after = table.Column<byte[]>(type: "bytea", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_record", x => x.id);
                    table.ForeignKey(
                        name: "fk_record_people_who",
                        column: x => x.who,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "sets",
                columns: table => new
                {
                    kind = table.Column<string>(type: "text", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    made_by = table.Column<Guid>(type: "uuid", nullable: true),
                    made_at = table.Column<long>(type: "bigint", nullable: false),
                    body = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sets", x => new { x.kind, x.number });
                    table.ForeignKey(
                        name: "fk_sets_people_made_by",
                        column: x => x.made_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "draft_build",
                columns: table => new
                {
                    draft = table.Column<Guid>(type: "uuid", nullable: false),
                    method = table.Column<string>(type: "text", nullable: true),
                    seconds = table.Column<double>(type: "double precision", nullable: true),
                    ice = table.Column<string>(type: "text", nullable: true),
                    glass = table.Column<string>(type: "text", nullable: true),
                    strain = table.Column<string>(type: "text", nullable: true),
                    served_on = table.Column<string>(type: "text", nullable: true),
                    steps = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_draft_build", x => x.draft);
                    table.ForeignKey(
                        name: "fk_draft_build_drafts_draft",
                        column: x => x.draft,
                        principalTable: "drafts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "edits",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    draft = table.Column<Guid>(type: "uuid", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    author = table.Column<Guid>(type: "uuid", nullable: false),
                    page = table.Column<Guid>(type: "uuid", nullable: false),
                    seen = table.Column<int>(type: "integer", nullable: false),
                    action = table.Column<byte[]>(type: "bytea", nullable: false),
                    undo = table.Column<byte[]>(type: "bytea", nullable: false),
                    at = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_edits", x => x.id);
                    table.ForeignKey(
                        name: "fk_edits_drafts_draft",
                        column: x => x.draft,
                        principalTable: "drafts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_edits_people_author",
                        column: x => x.author,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "iterations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    draft = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    parent = table.Column<Guid>(type: "uuid", nullable: true),
                    reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    saved_by = table.Column<Guid>(type: "uuid", nullable: false),
                    saved_at = table.Column<long>(type: "bigint", nullable: false),
                    draft_version = table.Column<int>(type: "integer", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    abv_percent = table.Column<double>(type: "double precision", nullable: true),
                    acid_citric_g_per_100ml = table.Column<double>(type: "double precision", nullable: true),
                    brix = table.Column<double>(type: "double precision", nullable: true),
                    cost = table.Column<double>(type: "double precision", nullable: true),
                    dilution_percent = table.Column<double>(type: "double precision", nullable: true),
                    energy_kcal = table.Column<double>(type: "double precision", nullable: true),
                    glass_fill_percent = table.Column<double>(type: "double precision", nullable: true),
                    ph = table.Column<double>(type: "double precision", nullable: true),
                    sugar_g_per_100ml = table.Column<double>(type: "double precision", nullable: true),
                    sugar_acid_ratio = table.Column<double>(type: "double precision", nullable: true),
                    sweetness_g_per_100ml = table.Column<double>(type: "double precision", nullable: true),
                    final_temp_c = table.Column<double>(type: "double precision", nullable: true),
                    unknown_percent = table.Column<double>(type: "double precision", nullable: true),
                    volume_ml = table.Column<double>(type: "double precision", nullable: true),
                    bands_set = table.Column<int>(type: "integer", nullable: false),
                    engine = table.Column<int>(type: "integer", nullable: false),
                    ice_set = table.Column<int>(type: "integer", nullable: false),
                    jurisdiction = table.Column<string>(type: "text", nullable: false),
                    measures_set = table.Column<int>(type: "integer", nullable: false),
                    perception_set = table.Column<int>(type: "integer", nullable: false),
                    rules_edition = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_iterations", x => x.id);
                    table.ForeignKey(
                        name: "fk_iterations_drafts_draft",
                        column: x => x.draft,
                        principalTable: "drafts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_iterations_iterations_parent",
                        column: x => x.parent,
                        principalTable: "iterations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_iterations_people_saved_by",
                        column: x => x.saved_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "draft_lines",
                columns: table => new
                {
                    line = table.Column<Guid>(type: "uuid", nullable: false),
                    draft = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    text = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: true),
                    amount = table.Column<double>(type: "double precision", nullable: true),
                    amount_low = table.Column<double>(type: "double precision", nullable: true),
                    amount_high = table.Column<double>(type: "double precision", nullable: true),
                    unit = table.Column<string>(type: "text", nullable: false),
                    volume_ml = table.Column<double>(type: "double precision", nullable: true),
                    mass_g = table.Column<double>(type: "double precision", nullable: true),
                    mass_uncertainty_g = table.Column<double>(type: "double precision", nullable: false),
                    assumptions = table.Column<string>(type: "text", nullable: false),
                    place = table.Column<string>(type: "text", nullable: false),
                    joins = table.Column<string>(type: "text", nullable: false),
                    start_c = table.Column<double>(type: "double precision", nullable: true),
                    treatment = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_draft_lines", x => new { x.draft, x.line });
                    table.ForeignKey(
                        name: "fk_draft_lines_drafts_draft",
                        column: x => x.draft,
                        principalTable: "drafts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_draft_lines_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ingredient_aliases",
                columns: table => new
                {
                    alias = table.Column<string>(type: "text", nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false),
                    search_name = table.Column<string>(type: "text", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    assumes = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ingredient_aliases", x => new { x.ingredient, x.alias });
                    table.ForeignKey(
                        name: "fk_ingredient_aliases_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ingredient_allergens",
                columns: table => new
                {
                    allergen = table.Column<string>(type: "text", nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false),
                    state = table.Column<string>(type: "text", nullable: false),
                    law = table.Column<string>(type: "text", nullable: false),
                    source = table.Column<string>(type: "text", nullable: false),
                    note = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ingredient_allergens", x => new { x.ingredient, x.allergen });
                    table.ForeignKey(
                        name: "fk_ingredient_allergens_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ingredient_figures",
                columns: table => new
                {
                    quantity = table.Column<string>(type: "text", nullable: false),
                    origin = table.Column<string>(type: "text", nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false),
                    value = table.Column<double>(type: "double precision", nullable: true),
                    low = table.Column<double>(type: "double precision", nullable: true),
                    high = table.Column<double>(type: "double precision", nullable: true),
                    source = table.Column<string>(type: "text", nullable: false),
                    status = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ingredient_figures", x => new { x.ingredient, x.quantity, x.origin });
                    table.ForeignKey(
                        name: "fk_ingredient_figures_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ingredient_now",
                columns: table => new
                {
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false),
                    composition = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ingredient_now", x => x.ingredient);
                    table.ForeignKey(
                        name: "fk_ingredient_now_compositions_composition",
                        column: x => x.composition,
                        principalTable: "compositions",
                        principalColumn: "hash",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_ingredient_now_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "ingredient_pieces",
                columns: table => new
                {
                    measure = table.Column<string>(type: "text", nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false),
                    grams = table.Column<double>(type: "double precision", nullable: false),
                    source = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ingredient_pieces", x => new { x.ingredient, x.measure });
                    table.ForeignKey(
                        name: "fk_ingredient_pieces_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ingredient_roles",
                columns: table => new
                {
                    role = table.Column<string>(type: "text", nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ingredient_roles", x => new { x.ingredient, x.role });
                    table.ForeignKey(
                        name: "fk_ingredient_roles_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "packs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false),
                    site = table.Column<Guid>(type: "uuid", nullable: false),
                    supplier = table.Column<string>(type: "text", nullable: false),
                    amount = table.Column<double>(type: "double precision", nullable: false),
                    unit = table.Column<string>(type: "text", nullable: false),
                    archived_at = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_packs", x => x.id);
                    table.ForeignKey(
                        name: "fk_packs_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_packs_sites_site",
                        column: x => x.site,
                        principalTable: "sites",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "readings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<double>(type: "double precision", nullable: false),
                    unit = table.Column<string>(type: "text", nullable: false),
                    temperature_c = table.Column<double>(type: "double precision", nullable: true),
                    day = table.Column<string>(type: "text", nullable: false),
                    read_by = table.Column<Guid>(type: "uuid", nullable: false),
                    note = table.Column<string>(type: "text", nullable: false),
                    replaces = table.Column<Guid>(type: "uuid", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_readings", x => x.id);
                    table.ForeignKey(
                        name: "fk_readings_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_readings_people_read_by",
                        column: x => x.read_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_readings_readings_replaces",
                        column: x => x.replaces,
                        principalTable: "readings",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "iteration_bodies",
                columns: table => new
                {
                    iteration = table.Column<Guid>(type: "uuid", nullable: false),
                    balance = table.Column<byte[]>(type: "bytea", nullable: false),
                    inputs = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_iteration_bodies", x => x.iteration);
                    table.ForeignKey(
                        name: "fk_iteration_bodies_iterations_iteration",
                        column: x => x.iteration,
                        principalTable: "iterations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "iteration_lines",
                columns: table => new
                {
                    iteration = table.Column<Guid>(type: "uuid", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    ingredient = table.Column<Guid>(type: "uuid", nullable: false),
                    composition = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_iteration_lines", x => new { x.iteration, x.position });
                    table.ForeignKey(
                        name: "fk_iteration_lines_compositions_composition",
                        column: x => x.composition,
                        principalTable: "compositions",
                        principalColumn: "hash",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_iteration_lines_ingredients_ingredient",
                        column: x => x.ingredient,
                        principalTable: "ingredients",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_iteration_lines_iterations_iteration",
                        column: x => x.iteration,
                        principalTable: "iterations",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "prices",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    pack = table.Column<Guid>(type: "uuid", nullable: false),
                    amount = table.Column<long>(type: "bigint", nullable: false),
                    currency = table.Column<string>(type: "character varying(3)", maxLength: 3, nullable: false),
                    is_gross = table.Column<bool>(type: "boolean", nullable: false),
                    tax_rate = table.Column<long>(type: "bigint", nullable: false),
                    from_day = table.Column<string>(type: "text", nullable: false),
                    entered_by = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_prices", x => x.id);
                    table.ForeignKey(
                        name: "fk_prices_packs_pack",
                        column: x => x.pack,
                        principalTable: "packs",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_prices_people_entered_by",
                        column: x => x.entered_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_draft_lines_ingredient",
                table: "draft_lines",
                column: "ingredient");

            migrationBuilder.CreateIndex(
                name: "ix_drafts_made_by",
                table: "drafts",
                column: "made_by");

            migrationBuilder.CreateIndex(
                name: "ix_drafts_search_name",
                table: "drafts",
                column: "search_name");

            migrationBuilder.CreateIndex(
                name: "ix_edits_author",
                table: "edits",
                column: "author");

            migrationBuilder.CreateIndex(
                name: "ix_edits_draft_version",
                table: "edits",
                columns: new[] { "draft", "version" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_ingredient_aliases_search_name",
                table: "ingredient_aliases",
                column: "search_name");

            migrationBuilder.CreateIndex(
                name: "ix_ingredient_now_composition",
                table: "ingredient_now",
                column: "composition");

            migrationBuilder.CreateIndex(
                name: "ix_ingredients_archived_by",
                table: "ingredients",
                column: "archived_by");

            migrationBuilder.CreateIndex(
                name: "ix_ingredients_key",
                table: "ingredients",
                column: "key",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_ingredients_merged_into",
                table: "ingredients",
                column: "merged_into");

            migrationBuilder.CreateIndex(
                name: "ix_ingredients_search_name",
                table: "ingredients",
                column: "search_name");

            migrationBuilder.CreateIndex(
                name: "ix_iteration_lines_composition",
                table: "iteration_lines",
                column: "composition");

            migrationBuilder.CreateIndex(
                name: "ix_iteration_lines_ingredient",
                table: "iteration_lines",
                column: "ingredient");

            migrationBuilder.CreateIndex(
                name: "ix_iterations_draft_number",
                table: "iterations",
                columns: new[] { "draft", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_iterations_parent",
                table: "iterations",
                column: "parent");

            migrationBuilder.CreateIndex(
                name: "ix_iterations_saved_by",
                table: "iterations",
                column: "saved_by");

            migrationBuilder.CreateIndex(
                name: "ix_packs_ingredient",
                table: "packs",
                column: "ingredient");

            migrationBuilder.CreateIndex(
                name: "ix_packs_site",
                table: "packs",
                column: "site");

            migrationBuilder.CreateIndex(
                name: "ix_prices_entered_by",
                table: "prices",
                column: "entered_by");

            migrationBuilder.CreateIndex(
                name: "ix_prices_pack",
                table: "prices",
                column: "pack");

            migrationBuilder.CreateIndex(
                name: "ix_readings_ingredient",
                table: "readings",
                column: "ingredient");

            migrationBuilder.CreateIndex(
                name: "ix_readings_read_by",
                table: "readings",
                column: "read_by");

            migrationBuilder.CreateIndex(
                name: "ix_readings_replaces",
                table: "readings",
                column: "replaces");

            migrationBuilder.CreateIndex(
                name: "ix_record_on_table_on_id",
                table: "record",
                columns: new[] { "on_table", "on_id" });

            migrationBuilder.CreateIndex(
                name: "ix_record_who",
                table: "record",
                column: "who");

            migrationBuilder.CreateIndex(
                name: "ix_sets_made_by",
                table: "sets",
                column: "made_by");

            // Nothing that is written here is ever changed, replaced or deleted (design, decision 4).
            migrationBuilder.Freeze("compositions", [["hash"]], repeatsAreHonest: true);
            migrationBuilder.FreezeEdits([["id"], ["draft", "version"]]);
            migrationBuilder.Freeze("iteration_bodies", [["iteration"]]);
            migrationBuilder.Freeze("iteration_lines", [["iteration", "position"]]);
            migrationBuilder.Freeze("iterations", [["id"], ["draft", "number"]]);
            migrationBuilder.Freeze("prices", [["id"]]);
            migrationBuilder.Freeze("readings", [["id"]]);
            migrationBuilder.Freeze("record", [["id"]]);
            migrationBuilder.Freeze("sets", [["kind", "number"]]);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "draft_build");

            migrationBuilder.DropTable(
                name: "draft_lines");

            migrationBuilder.DropTable(
                name: "edits");

            migrationBuilder.DropTable(
                name: "house_settings");

            migrationBuilder.DropTable(
                name: "ingredient_aliases");

            migrationBuilder.DropTable(
                name: "ingredient_allergens");

            migrationBuilder.DropTable(
                name: "ingredient_figures");

            migrationBuilder.DropTable(
                name: "ingredient_now");

            migrationBuilder.DropTable(
                name: "ingredient_pieces");

            migrationBuilder.DropTable(
                name: "ingredient_roles");

            migrationBuilder.DropTable(
                name: "iteration_bodies");

            migrationBuilder.DropTable(
                name: "iteration_lines");

            migrationBuilder.DropTable(
                name: "prices");

            migrationBuilder.DropTable(
                name: "readings");

            migrationBuilder.DropTable(
                name: "record");

            migrationBuilder.DropTable(
                name: "sets");

            migrationBuilder.DropTable(
                name: "compositions");

            migrationBuilder.DropTable(
                name: "iterations");

            migrationBuilder.DropTable(
                name: "packs");

            migrationBuilder.DropTable(
                name: "drafts");

            migrationBuilder.DropTable(
                name: "ingredients");

            migrationBuilder.DropTable(
                name: "sites");

            migrationBuilder.DropTable(
                name: "people");
        }
    }
}
